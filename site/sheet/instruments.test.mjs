// What the instruments for the hand work out by themselves.

import assert from 'node:assert/strict';
import { test } from 'node:test';

Object.assign(globalThis, { BroadcastChannel: undefined }); // one that stands open keeps the test from ending
const { here } = await import('../kit/asking.js');
const { mountRows } = await import('./nuts.js');
const { passesOf, standOf } = await import('./passes.js');
const { bandsAt } = await import('./speeds.js');
const { partsOf, shareOf } = await import('./whatif.js');

test('mounts stand in rows from forward aft, from port to starboard, however they are listed', () => {
  const m = (/** @type {number} */ forward, /** @type {number} */ starboard) => ({ forward, starboard });
  assert.deepEqual(mountRows([m(0.17, 0.2), m(0.64, 0.22), m(0.65, -0.22), m(0.17, -0.2)]), [[2, 1], [3, 0]]);
  assert.deepEqual(mountRows([m(0.6, 0), m(0.1, 0.2), m(0.1, -0.2)]), [[0], [2, 1]]);
  assert.deepEqual(mountRows([m(0.3, 0)]), [[0]]);
});

test('bolts are gone over in their order each pass, and once round at the full torque', () => {
  const of = { order: [1, 3, 2, 4], passes: ['12 N·m', '25 N·m', '38 N·m'] };
  const at = (/** @type {number} */ done) => {
    const { round, torque, bolt, over } = standOf(of, done);
    return over ? 'over' : `${round + 1}: bolt ${bolt} at ${torque}`;
  };
  assert.deepEqual([0, 1, 4, 11, 12, 13, 15, 16].map(at), ['1: bolt 1 at 12 N·m', '1: bolt 3 at 12 N·m', '2: bolt 1 at 25 N·m', '3: bolt 4 at 38 N·m', '4: bolt 1 at 38 N·m', '4: bolt 2 at 38 N·m', '4: bolt 4 at 38 N·m', 'over']);
});

test('bolts are gone over in the sequence that the sheet has, whatever its text', () => {
  const of = here(passesOf({ inputs: [], results: [{ name: 'wrenchSetting', text: '38 N·m', si: 38 }, { name: 'firstTorque', text: '12 N·m' }, { name: 'secondTorque', text: '25 N·m' }, { name: 'tighteningOrder', text: 'crosswise, 2 by 2', sequence: [1, 3, 2, 4] }] }));
  assert.deepEqual(of, { order: [1, 3, 2, 4], passes: ['12 N·m', '25 N·m', '38 N·m'] });
});

test('a torque that is not settled gets no passes', () => {
  const sheet = { inputs: [], results: [{ name: 'wrenchSetting', text: '70 N·m', unsettled: 'NOT SETTLED: 70 N·m calculated, this bolt can break from 60 N·m' }] };
  assert.equal(here(passesOf(sheet)), null);
});

test('a speed lies in the bands that hold it, ends among them', () => {
  const bands = [{ title: 'once', from: 3660, to: 4500 }, { title: 'blades', from: 1220, to: 1500 }];
  assert.deepEqual([1219, 1220, 1500, 1501, 4000].map((s) => bandsAt(bands, s).map((b) => b.title).join()), ['', 'blades', 'blades', '', 'once']);
});

test('what if takes a share of a plain number and keeps its unit', () => {
  const scale = { 'N·m': [0, 1], in: [0, 0.0254], '°C': [273.15, 1] };
  const read = { si: (text) => { const [n, unit] = text.split(' '); return scale[unit][0] + Number(n) * scale[unit][1]; } };
  assert.deepEqual(partsOf(37.8, {}, 'N·m', read), { number: 37.8, unit: 'N·m' });
  assert.deepEqual(partsOf(0.0428625, {}, 'in', read), { number: 1.6875, unit: 'in' }, '1-11/16 in');
  assert.deepEqual(partsOf(291.15, {}, '°C', read), { number: 18, unit: '°C' });
  assert.deepEqual(partsOf(0.15, {}, '', read), { number: 0.15, unit: '' });
  for (const none of [0, undefined]) assert.equal(partsOf(none, {}, 'in', read), null, none);
  assert.equal(shareOf({ number: 37.8, unit: 'N·m' }, 0.95, false), '35.9 N·m');
  assert.equal(shareOf({ number: 3, unit: '' }, 1.5, true), '5');
});
