// Tests of the page's own logic that needs no browser: node --test site/

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { at, below, names, trimmed, withAt } from './pointer.js';
import { leftOver, placesFor, remember } from './remember.js';
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

test('what was typed goes to its place in the boat, readings under their day', () => {
  const schema = {
    properties: {
      diameter: { title: 'Diameter', boat: '/shaft/diameter' },
      gap: { title: 'Gap', boat: '/readings/latest/gap' },
      hours: { title: 'Hours', boat: '/readings/hours-of-run/gap' },
      date: { title: 'Date', boat: '/readings/latest/date' },
      gauge: { title: 'Gauge' },
      kind: { title: 'Kind', boat: '/coupling/kind' },
    },
  };
  const typed = { diameter: '30 mm', gap: '0.4 mm', hours: '3 h', date: '2026-01-01', gauge: 'feeler', kind: 'rigid' };
  const places = placesFor(schema, typed);
  assert.deepEqual(places.map((p) => p.name), ['diameter', 'gap', 'kind']);
  const before = { readings: [{ date: '2026-05-01', coupling: { kind: 'flexible' } }] };
  const after = remember(before, places, typed, '2026-06-01');
  // A reading of May says what kind the coupling is since, so the new kind is dated too.
  assert.deepEqual(after, {
    shaft: { diameter: '30 mm' },
    readings: [before.readings[0], { date: '2026-06-01', gap: '0.4 mm', coupling: { kind: 'rigid' } }],
  });
  assert.equal(before.readings.length, 1);
  assert.deepEqual(remember(after, places.slice(1, 2), { gap: '0.3 mm' }, '2026-06-01').readings[1].gap, '0.3 mm');
  assert.deepEqual(leftOver(typed, places), { hours: '3 h', date: '2026-01-01', gauge: 'feeler' });
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
