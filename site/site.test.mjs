// Tests of the page's own logic that needs no browser: node --test site/

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { at, below, names, trimmed, withAt } from './pointer.js';
import { unlike } from './shelf.js';
import { unitFor, withUnit } from './units.js';

test('pointers escape as RFC 6901 says', () => {
  // The examples of RFC 6901, section 5.
  const document = { 'foo': ['bar', 'baz'], '': 0, 'a/b': 1, 'c%d': 2, 'm~n': 8, ' ': 7 };
  for (const [pointer, value] of [['', document], ['/foo', ['bar', 'baz']], ['/foo/0', 'bar'], ['/', 0], ['/a~1b', 1], ['/c%d', 2], ['/m~0n', 8], ['/ ', 7]]) {
    assert.deepEqual(at(document, pointer), value, pointer);
  }
  assert.equal(below('/x', 'a/b~c'), '/x/a~1b~0c');
  assert.deepEqual(names('/x/a~1b~0c'), ['x', 'a/b~c']);
});

test('only own members are found', () => {
  assert.equal(at({}, '/constructor'), undefined);
  assert.equal(at({}, '/__proto__/x'), undefined);
});

test('putting leaves the old value alone and clears what becomes empty', () => {
  const before = { engine: { power: '24 kW' } };
  assert.deepEqual(withAt(before, '/engine/speed', '2800 rpm'), { engine: { power: '24 kW', speed: '2800 rpm' } });
  assert.deepEqual(before, { engine: { power: '24 kW' } });
  assert.equal(withAt(before, '/engine/power', undefined), undefined);
});

test('two boats of one name are told apart', () => {
  assert.equal(unlike('Petrel', ['Dipper']), 'Petrel');
  assert.equal(unlike('Petrel', ['Petrel', 'Petrel (2)', 'Dipper']), 'Petrel (3)');
});

test('rows keep their numbers', () => {
  assert.deepEqual(withAt({}, '/readings/2/gap', '1 mm'), { readings: [{}, {}, { gap: '1 mm' }] });
  assert.deepEqual(withAt({ readings: [{ gap: '1' }, { gap: '2' }] }, '/readings/0/gap', undefined), { readings: [{}, { gap: '2' }] });
});

test('rows without anything are not sent from the end of a list', () => {
  assert.deepEqual(trimmed({ readings: [{}, { gap: '1' }, {}, {}] }), { readings: [{}, { gap: '1' }] });
  assert.equal(trimmed({ readings: [{}, {}], engine: {} }), undefined);
});

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
