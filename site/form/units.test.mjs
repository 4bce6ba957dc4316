// The unit of a bare number.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { unitFor, withUnit } from './units.js';

test('a bare number takes the unit beside its field, and nothing else does', () => {
  for (const bare of ['12', '1.5', '-3', '1,5', '7/16', '1-11/16', '1 1/4', ' 12 ']) {
    assert.equal(withUnit(bare, 'mm'), `${bare.trim()} mm`, bare);
  }
  for (const text of ['', '12 in', '7/16"', '12 ± 1', '5 %', 'wide', '1e3', '2 3', '1-2', '12/', '1//2']) {
    assert.equal(withUnit(text, 'mm'), text, text);
  }
  assert.equal(withUnit('0.2', ''), '0.2');
});

test('the unit follows the system in force', () => {
  const schema = { units: ['mm', 'in'] };
  assert.equal(unitFor(schema, 'metric'), 'mm');
  assert.equal(unitFor(schema, 'us'), 'in');
  assert.equal(unitFor(schema, 'both'), 'mm');
  assert.equal(unitFor({}, 'us'), '');
});
