// The places that JSON pointers point at.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { at, below, names, tidied, trimmed, withAt } from './pointer.js';

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

test('rows keep their numbers', () => {
  assert.deepEqual(withAt({}, '/readings/2/gap', '1 mm'), { readings: [{}, {}, { gap: '1 mm' }] });
  assert.deepEqual(withAt({ readings: [{ gap: '1' }, { gap: '2' }] }, '/readings/0/gap', undefined), { readings: [{}, { gap: '2' }] });
});

test('rows without anything are not sent from the end of a list', () => {
  assert.deepEqual(trimmed({ readings: [{}, { gap: '1' }, {}, {}] }), { readings: [{}, { gap: '1' }] });
  assert.equal(trimmed({ readings: [{}, {}], engine: {} }), undefined);
});

test('what was not touched stays as it was, empty lists too', () => {
  const was = { name: 'A', work: { remedies: [] }, readings: [{ date: 'd', work: { remedies: [] } }], mounts: [{}, { name: 'x' }] };
  assert.equal(tidied(was, was), was);
  const now = withAt(was, '/name', 'B');
  assert.deepEqual(tidied(now, was), { ...was, name: 'B' });
  const row = withAt(was, '/readings/0/note', 'n');
  assert.deepEqual(tidied(row, was).readings, [{ date: 'd', work: { remedies: [] }, note: 'n' }]);
  assert.deepEqual(tidied(withAt(was, '/gland', { packing: '' }), was).gland, { packing: '' });
  assert.deepEqual(tidied({ ...was, mounts: [{}, { name: 'x' }, {}] }, was).mounts, was.mounts);
  assert.equal(tidied({ gland: { rings: [{}] } }, {}), undefined);
});
