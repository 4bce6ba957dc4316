// How dark the parts of the line are.

import assert from 'node:assert/strict';
import { test } from 'node:test';

Object.assign(globalThis, { BroadcastChannel: undefined }); // one that stands open keeps the test from ending
const { shade, suspicions } = await import('./suspects.js');

test('a part is as suspect as its most probable cause, and what was found is told apart from that', () => {
  const columns = ['name', 'part', 'state', 'probability'].map((name) => ({ name, title: name, level: 'main' }));
  const row = (/** @type {string} */ part, /** @type {string} */ state, /** @type {number} */ si) => ({ cells: [{ text: 'a cause' }, { text: part }, { text: state }, { text: `${si}`, si }] });
  const sheet = /** @type {any} */ ({ tables: [{ name: 'ranking', columns, rows: [row('gland', 'found', 0.9), row('gland', 'suspected', 0.2), row('shaft', 'suspected', 0.1), row('shaft', 'suspected', 0.4)] }] });
  assert.deepEqual([...suspicions(sheet)], [['gland', { found: true, odds: 0.2 }], ['shaft', { found: false, odds: 0.4 }]]);
  assert.equal(suspicions(/** @type {any} */ ({})).size, 0);
});

test('the shade grows with the odds, and is darkest from even odds on', () => {
  const odds = [0, 0.049, 0.05, 0.149, 0.15, 0.3, 0.499, 0.5, 1];
  assert.deepEqual(odds.map(shade), [0, 0, 1, 1, 2, 3, 3, 4, 4]);
});
