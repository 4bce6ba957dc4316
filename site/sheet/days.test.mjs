// A plan by days, and its shopping list as a text.

import assert from 'node:assert/strict';
import { test } from 'node:test';

Object.assign(globalThis, { BroadcastChannel: undefined }); // one that stands open keeps the test from ending
const { byDay, stretch } = await import('./days.js');
const { listText } = await import('./errands.js');

test('steps stand under their days in order, those without a day last', () => {
  const days = byDay(['2026-11-18 b', ' none', '2026-11-02 a', '2026-11-18 c'], (s) => s.split(' ')[0] ?? '');
  assert.deepEqual(days, [['2026-11-02', ['2026-11-02 a']], ['2026-11-18', ['2026-11-18 b', '2026-11-18 c']], ['', [' none']]]);
});

test('a window lies on the strip with its first and its last day, and only as far as the strip goes', () => {
  const first = Date.UTC(2026, 9, 20) / 86400000;
  assert.deepEqual(stretch({ from: '2026-10-24', to: '2026-10-26' }, first, first + 30), { x: 4, width: 3 });
  assert.deepEqual(stretch({ from: '2026-10-01', to: '2026-10-20' }, first, first + 30), { x: 0, width: 1 });
  assert.equal(stretch({ from: '2026-10-01', to: '2026-10-19' }, first, first + 30), null);
});

test('the list to send has a line for each part, with the day to order by where there is one', () => {
  const columns = ['part', 'amount', 'size', 'orderBy', 'remark'].map((name) => ({ name, title: name, level: 'main' }));
  const row = (/** @type {string[]} */ ...texts) => ({ cells: texts.map((text) => ({ text })) });
  const table = /** @type {any} */ ({ title: 'To buy', columns, rows: [row('Engine mount', '4 × piece', '', '2026-11-04', 'long'), row('Packing', '0.55 m', '8 mm', 'when its step has a date', '')] });
  table.rows[1].cells[3].word = 'undated';
  assert.equal(listText(table, 'Kittiwake', '2026-10-01'), 'To buy, Kittiwake, 2026-10-01\n☐ 4 × piece Engine mount; order by 2026-11-04\n☐ 0.55 m Packing; 8 mm');
});
