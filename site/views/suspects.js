// The line of the boat in fault finding: each part the darker, the more
// probable a cause on it is; what was found there has a mark and a word of its
// own.

import { h } from '../kit/dom.js';
import { codeOf } from '../sheet/cells.js';
import { picture } from '../sheet/picture.js';
import { inHand, toSend } from '../store/shelf.js';
import { lineOf } from './asks.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {{ found: boolean, odds: number }} Suspicion */

/**
 * What is suspected or found on each part, by the name that causes have for
 * it: of several causes the most probable one.
 * @param {Sheet} sheet
 */
export function suspicions(sheet) {
  const table = (sheet.tables ?? []).find((t) => t.name === 'ranking');
  const at = (/** @type {string} */ name) => table?.columns.findIndex((c) => c.name === name) ?? -1;
  /** @type {Map<string, Suspicion>} */
  const all = new Map();
  for (const { cells } of table?.rows ?? []) {
    const part = cells[at('part')]?.text ?? '';
    const before = all.get(part) ?? { found: false, odds: 0 };
    const found = codeOf(cells[at('state')]) === 'found';
    all.set(part, { found: before.found || found, odds: Math.max(before.odds, found ? 0 : (cells[at('probability')]?.si ?? 0)) });
  }
  return all;
}

/** How dark a part is, in steps that an eye tells apart. @param {number} odds */
export function shade(odds) {
  return odds >= 0.5 ? 4 : odds >= 0.3 ? 3 : odds >= 0.15 ? 2 : odds >= 0.05 ? 1 : 0;
}

/** @param {import('../app.js').App} app */
export function suspectLine(app) {
  const asked = app.calculator.call(lineOf(toSend(inHand().boat)));
  const reply = asked.ok ? asked : app.calculator.call(lineOf());
  const svg = reply.ok ? picture(reply.line.drawing.svg) : null;
  svg?.setAttribute('aria-hidden', 'true');
  const words = h('p', {});
  return {
    element: h('div', { class: 'suspects drawing line-drawing' }, svg),
    words,
    /**
     * @param {Sheet} sheet
     * @param {boolean} told whether anything was noticed
     * @param {string} besides
     */
    show(sheet, told, besides) {
      const all = suspicions(sheet);
      const said = (reply.ok ? reply.line.parts : []).flatMap(({ id, title, names }) => {
        const here = names.flatMap((n) => all.get(n) ?? []);
        const odds = told ? Math.max(0, ...here.map((x) => x.odds)) : 0;
        const found = here.some((x) => x.found);
        const shape = svg?.querySelector(`[id$="part-${id}"]`);
        shape?.setAttribute('class', `part shade-${shade(odds)}${found ? ' seen' : ''}`);
        return found || shade(odds) > 1 ? [{ odds: found ? 2 : odds, text: `${title} ${found ? 'found' : `${Math.round(100 * odds)} %`}` }] : [];
      });
      words.textContent = said.sort((a, b) => b.odds - a.odds).slice(0, 3).concat({ odds: 0, text: besides }).map((s) => s.text).join(' · ');
    },
  };
}
