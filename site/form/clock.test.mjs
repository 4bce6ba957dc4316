// Places and rows of the clock face.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { hourOf, oclock, placeOf, placesOf, roundOf, rowAt } from './clock.js';

test('directions become hours, and hours what people say', () => {
  for (const [degrees, hour, words] of /** @type {[number, number, string][]} */ ([[0, 12, "12 o'clock"], [360, 12, "12 o'clock"], [90, 3, "3 o'clock"], [45, 1.5, '1:30'], [-90, 9, "9 o'clock"], [15, 0.5, '12:30'], [359.99999, 12, "12 o'clock"]])) {
    assert.equal(hourOf((degrees * Math.PI) / 180), hour, String(degrees));
    assert.equal(oclock(hour), words);
  }
});

test('a face has its places from the top, those that rows have beside, and the top again where that closes the round', () => {
  const hours = (/** @type {import('./clock.js').Place[]} */ places) => places.map((p) => (p.again ? 'again' : p.hour));
  assert.deepEqual(hours(placesOf(4, [], false)), [12, 3, 6, 9]);
  assert.deepEqual(hours(placesOf(4, [1.5, 3], true)), [12, 1.5, 3, 6, 9, 'again']);
  assert.deepEqual(hours(placesOf(8, [], false)), [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5]);
});

test('a row belongs to its place, its turn of the shaft, and the second one at the top to the end of the round', () => {
  const rows = [{ hour: 12, turn: 0 }, { hour: 3, turn: 0 }, { hour: 3, turn: Math.PI / 2 }, { hour: 12, turn: 0 }, { hour: undefined, turn: 0 }];
  assert.equal(rowAt(rows, { hour: 12, again: false }, 0), 0);
  assert.equal(rowAt(rows, { hour: 12, again: true }, 0), 3);
  assert.equal(rowAt(rows, { hour: 3, again: false }, Math.PI / 2), 2);
  assert.equal(rowAt(rows, { hour: 9, again: false }, 0), -1);
});

test('a list is read round the clock where it has a direction and a length', () => {
  const clock = { quantity: 'direction' };
  const gap = { quantity: 'length' };
  assert.equal(roundOf({}, [['name', {}], ['gap', gap]]), null);
  assert.equal(roundOf({}, [['clock', clock]]), null);
  const found = roundOf({ examples: [[{ at: '12' }, { at: '3' }, { at: '12' }]] }, [['at', clock], ['face', gap], ['rim', gap], ['turn', { quantity: 'angle' }]]);
  assert.deepEqual([found?.where, found?.values.map(([n]) => n), found?.turn, found?.closes], ['at', ['face', 'rim'], 'turn', true]);
});

test('a row is called by its place on the face, not by its number', () => {
  const parts = { at: { quantity: 'direction' }, gap: { quantity: 'length' }, turn: { quantity: 'angle' } };
  /** @type {Map<string, import('./clock.js').Round>} */
  const rounds = new Map([['/gaps', { where: 'at', values: [['gap', parts.gap]], turn: 'turn', closes: true, parts }]]);
  const read = { si: (/** @type {unknown} */ value) => (typeof value === 'number' ? value : undefined) };
  const all = { gaps: [{ at: 0 }, { at: Math.PI }, { at: Math.PI, turn: Math.PI / 2 }, { at: 0 }, { at: 'left' }], other: [{ at: 0 }] };
  const said = (/** @type {string} */ pointer) => placeOf(all, rounds, pointer, read);
  assert.deepEqual([0, 1, 2, 3, 4].map((i) => said(`/gaps/${i}/gap`)), ["12 o'clock", "6 o'clock", "6 o'clock, turned 90°", "12 o'clock again", '']);
  assert.equal(said('/other/0/gap'), '');
  assert.equal(said('/diameter'), '');
});
