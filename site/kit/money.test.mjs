// Run with: node --test site/

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { currencyIn, eitherAmount, readMoney } from './money.js';

test('an amount is read as people type it, where that is certain', () => {
  for (const [typed, read] of [
    ['1500 usd', '1500 USD'],
    ['usd 1500', '1500 USD'],
    ['USD 1500', '1500 USD'],
    ['1500usd', '1500 USD'],
    ['1500 euro', '1500 EUR'],
    ['1500 Euros', '1500 EUR'],
    ['12.50 pounds sterling', '12.50 GBP'],
    ['1,500 $', '1500 $'],
    ['$1,500', '$1500'],
    ['1,500.50 eur', '1500.50 EUR'],
    ["1'500 chf", '1500 CHF'],
    ['1 500 000 eur', '1500000 EUR'],
    ['1500 eur ± 20 %', '1500 EUR ± 20 %'],
    ['1500 eur ± 200 eur', '1500 EUR ± 200 EUR'],
    // what is not certain stays for the calculator to refuse
    ['1500', '1500'],
    ['1500 dollars', '1500 dollars'],
    ['1500 pounds', '1500 pounds'],
    ['1500 abc', '1500 abc'],
    ['1,500 KWD', '1,500 KWD'], // a dinar has thousandths
    ['1500 all', '1500 all'], // a word, and a code in capitals
    ['1500 ALL', '1500 ALL'],
    ['1,50 eur', '1,50 EUR'],
    ['1,500,00 eur', '1,500,00 EUR'],
    ['100-150 EUR', '100-150 EUR'],
    ['about 20', 'about 20'],
    ['€ 20 eur', '€ 20 eur'],
    ['', ''],
  ]) assert.equal(readMoney(typed), read, typed);
});

test('three digits behind one point are cents or thousands: it is asked which', () => {
  for (const [typed, read, either] of [
    ['1.500 €', '1.500 € ?', ['1500 €', '1.50 €']],
    ['€1.500', '€1.500 ?', ['1500 €', '1.50 €']],
    ['1.500 eur', '1.500 EUR ?', ['1500 EUR', '1.50 EUR']],
    ['EUR 12.345', '12.345 EUR ?', ['12345 EUR', '12.35 EUR']],
    ['1.500 EUR ?', '1.500 EUR ?', ['1500 EUR', '1.50 EUR']],
    // certain
    ['1.50 €', '1.50 €', []],
    ['0.500 €', '0.500 €', []],
    ['1500.000 €', '1500.000 €', []],
    ['1.500 KWD', '1.500 KWD', []],
    ['1.500', '1.500', []],
    ['1.500 mm', '1.500 mm', []],
  ]) {
    assert.equal(readMoney(typed), read, typed);
    assert.deepEqual(eitherAmount(read), either, typed);
  }
  assert.equal(readMoney('1.500', 'EUR'), '1.500 EUR ?');
});

test('a bare number takes the currency that is usual, and only a bare one', () => {
  assert.equal(readMoney('1500', 'EUR'), '1500 EUR');
  assert.equal(readMoney('1,500', 'EUR'), '1500 EUR');
  assert.equal(readMoney('1500 ± 20 %', 'EUR'), '1500 EUR ± 20 %');
  assert.equal(readMoney('1500 kroner', 'EUR'), '1500 kroner');
  assert.equal(readMoney('1500 nok', 'EUR'), '1500 NOK');
});

test('the currency of a boat is the one of all its amounts, but for the place that is typed in', () => {
  const boat = { mass: '2 kg', spares: [{ part: 'x', price: '38 EUR' }, { price: '140 EUR ± 10 %' }] };
  assert.equal(currencyIn(boat, '/spares/1/price'), 'EUR');
  for (const unclear of ['38 €', 'EUR 38', '100-150 EUR']) assert.equal(currencyIn({ ...boat, other: unclear }), '', unclear);
  assert.equal(currencyIn({ other: '$ 38' }), '');
  assert.equal(currencyIn({ price: '38 EUR' }, '/price'), '');
  assert.equal(currencyIn({ ...boat, labour: '60 GBP' }, ''), '');
  assert.equal(currencyIn({ ...boat, labour: '60 GBP' }, '/labour'), 'EUR');
  assert.equal(currencyIn({ power: '24 CFM' }, ''), '');
});
