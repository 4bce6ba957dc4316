// The joints of the line with their margins; each opens its own sheet.

import { h } from '../kit/dom.js';
import { cells } from './cells.js';

/**
 * @param {import('../../wasm/marinecalc.js').Table} table its first column names the joint, those that are ratios are margins over 1
 * @param {string[]} opens the calculation behind each row
 */
export function jointList(table, opens) {
  const margins = table.columns.filter((c) => c.kind === 'ratio');
  const cell = cells(table);
  return h(
    'ul',
    { class: 'joints', 'aria-label': table.title },
    ...table.rows.map((row, i) => {
      const [least] = margins.flatMap((c) => cell(row, c.name)?.si ?? []).sort((a, b) => a - b);
      const bar = h('span', { class: least !== undefined && least < 1 ? 'margin-bar short' : 'margin-bar', 'aria-hidden': 'true' }, h('span', {}));
      if (bar.firstChild instanceof HTMLElement) bar.firstChild.style.width = `${least === undefined ? 0 : 50 * (least < 1 ? least : 2 - 1 / least)}%`;
      return h(
        'li',
        {},
        h('a', { href: `#/sheet/${opens[i] ?? ''}` }, h('span', {}, row.cells[0]?.text), bar, h('span', { class: 'margins' }, margins.map((c) => `${c.title} ${cell(row, c.name)?.text || 'not known'}`).join(' · '))),
      );
    }),
  );
}
