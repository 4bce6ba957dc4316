// How a result stands to a limit: a shape of its own for each word and an edge
// for each kind, so that nothing hangs on colour.

import { h, s } from '../kit/dom.js';

/** @typedef {import('../../wasm/marinecalc.js').Verdict} Verdict */

const SQUARE = 'M2 2 H22 V22 H2 Z';
const TICK = 'M7 12.5 L10.5 16 L17 8.5';
const CROSS = 'M8 8 L16 16 M16 8 L8 16';

/**
 * For each word that a verdict has: its class, the outline of its sign and the
 * mark inside. Guides have squares, and no two words one sign.
 * @type {{ [word: string]: { kind: string, outline: string, mark: string } }}
 */
export const SIGNS = {
  within: { kind: 'within', outline: 'M12 2 A10 10 0 1 1 11.99 2 Z', mark: TICK },
  'near the limit': { kind: 'near', outline: 'M12 1.5 L22.5 12 L12 22.5 L1.5 12 Z', mark: 'M12 7 V13 M12 15.5 V17' },
  beyond: { kind: 'beyond', outline: 'M7.5 1.5 H16.5 L22.5 7.5 V16.5 L16.5 22.5 H7.5 L1.5 16.5 V7.5 Z', mark: CROSS },
  'cannot tell': { kind: 'unsure', outline: SQUARE, mark: 'M8.5 9.5 A3.5 3.5 0 1 1 12 13 V14.5 M12 17 V18.5' },
  'outside the guide': { kind: 'near', outline: SQUARE, mark: CROSS },
  'about the guide': { kind: 'unmeasured', outline: SQUARE, mark: 'M6.5 10 C9.5 6 14.5 12.5 17.5 8.5 M6.5 15.5 C9.5 11.5 14.5 18 17.5 14' },
  'inside the guide': { kind: 'unmeasured', outline: SQUARE, mark: TICK },
  'not measured': { kind: 'unmeasured', outline: SQUARE, mark: 'M7 12 H17' },
};

const UNKNOWN = { kind: 'unsure', outline: '', mark: '' };

/** The class of a verdict's word. @param {string} word */
export function kindOf(word) {
  return (SIGNS[word] ?? UNKNOWN).kind;
}

/** @param {string} word */
export function sign(word) {
  const { kind, outline, mark } = SIGNS[word] ?? UNKNOWN;
  return s(
    'svg',
    { class: `sign sign-${kind}`, viewBox: '0 0 24 24', 'aria-hidden': 'true' },
    s('path', { class: 'sign-outline', d: outline }),
    s('path', { class: 'sign-mark', d: mark }),
  );
}

/** Whether a word says that a limit or a guide is passed. @param {string} word */
export function isPast(word) {
  return ['beyond', 'outside the guide'].includes(word);
}

/**
 * What people read for a verdict's word, with its sign.
 * @param {string} word
 * @param {string} reads
 */
export function badge(word, reads) {
  return h('span', { class: `badge ${kindOf(word)}` }, sign(word), reads);
}

/** @param {Verdict} verdict */
export function verdictCard(verdict) {
  return h(
    'div',
    { class: `verdict ${kindOf(verdict.word)}`, 'data-limit': verdict.limit },
    h('p', { class: 'word' }, badge(verdict.word, verdict.reads)),
    h('p', {}, verdict.sentence),
    verdict.settle && h('p', {}, verdict.settle),
    h('p', { class: 'source' }, backing(verdict)),
  );
}

/**
 * What kind of authority stands behind a verdict or a figure, and which: that
 * of common practice says so itself.
 * @param {{ authority?: string, source?: string }} of
 */
export function backing({ authority = '', source = '' }) {
  return source.startsWith(authority) ? source : `${authority}: ${source}`;
}
