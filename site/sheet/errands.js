// The shopping list as a text to send.

import { today } from '../kit/dates.js';
import { button, h } from '../kit/dom.js';
import { cells } from './cells.js';

/** @typedef {import('../../wasm/marinecalc.js').Table} Table */

/**
 * @param {Table} table
 * @param {string} boat
 * @param {string} day
 */
export function listText(table, boat, day) {
  const cell = cells(table);
  return [
    `${table.title}, ${boat}, ${day}`,
    ...table.rows.map((row) => {
      const at = (/** @type {string} */ column) => cell(row, column)?.text ?? '';
      const when = cell(row, 'orderBy')?.word || !at('orderBy') ? '' : `order by ${at('orderBy')}`;
      return `☐ ${[[at('amount'), at('part')].filter(Boolean).join(' '), at('size'), when].filter(Boolean).join('; ')}`;
    }),
  ].join('\n');
}

/**
 * @param {Table} table
 * @param {string} boat
 */
export function errands(table, boat) {
  const text = listText(table, boat, today());
  const area = h('textarea', { readonly: true, rows: Math.min(table.rows.length + 2, 12), 'aria-label': table.title }, text);
  const told = h('p', { role: 'status' });
  const copy = async () => {
    area.select();
    const done = await navigator.clipboard?.writeText(text).then(() => true, () => false);
    told.textContent = done ? 'Copied.' : 'Marked: copy it by hand.';
  };
  const send = typeof navigator.share === 'function' && button('Send it', () => void navigator.share({ title: table.title, text }).catch(() => {}));
  return h('details', { class: 'fold errands' }, h('summary', {}, `To buy (${table.rows.length}), to send`), area, h('div', { class: 'tools' }, send, button('Copy it', () => void copy())), told);
}
