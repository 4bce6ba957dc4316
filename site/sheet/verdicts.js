// How a result stands to a limit: words, a shape and an edge of its own for
// each verdict, so that nothing hangs on colour.

import { h, s } from '../kit/dom.js';

/** @typedef {import('../../wasm/marinecalc.js').Verdict} Verdict */

/**
 * For each word that a verdict has: its class, what people read for it, the
 * outline of its sign and the mark inside. A limit may be a greatest or a least
 * value, so what is beyond it is called neither over nor under.
 * @type {{ [word: string]: { kind: string, read: string, outline: string, mark: string } }}
 */
const SIGNS = {
  within: { kind: 'within', read: 'OK', outline: 'M12 2 A10 10 0 1 1 11.99 2 Z', mark: 'M7 12.5 L10.5 16 L17 8.5' },
  'near the limit': { kind: 'near', read: 'OK but close', outline: 'M12 1.5 L22.5 12 L12 22.5 L1.5 12 Z', mark: 'M12 7 V13 M12 15.5 V17' },
  beyond: { kind: 'beyond', read: 'outside the limit', outline: 'M7.5 1.5 H16.5 L22.5 7.5 V16.5 L16.5 22.5 H7.5 L1.5 16.5 V7.5 Z', mark: 'M8 8 L16 16 M16 8 L8 16' },
  'cannot tell': { kind: 'unsure', read: 'not enough to tell', outline: 'M2 2 H22 V22 H2 Z', mark: 'M8.5 9.5 A3.5 3.5 0 1 1 12 13 V14.5 M12 17 V18.5' },
  'not measured': { kind: 'unmeasured', read: 'not measured', outline: 'M2 2 H22 V22 H2 Z', mark: 'M7 12 H17' },
};

const UNKNOWN = { kind: 'unsure', read: '', outline: '', mark: '' };

/**
 * What people read for a verdict's word.
 * @param {string} word
 */
export function wordOf(word) {
  return SIGNS[word]?.read ?? word;
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

/**
 * The verdict with its sign, alone.
 * @param {string} word
 */
export function badge(word) {
  return h('span', { class: `badge ${(SIGNS[word] ?? UNKNOWN).kind}` }, sign(word), wordOf(word));
}

/** @param {Verdict} verdict */
export function verdictCard(verdict) {
  const { kind } = SIGNS[verdict.word] ?? UNKNOWN;
  return h(
    'div',
    { class: `verdict ${kind}`, 'data-limit': verdict.limit },
    h('p', { class: 'word' }, badge(verdict.word)),
    h('p', {}, verdict.sentence),
    verdict.settle && h('p', {}, verdict.settle),
    h('p', { class: 'source' }, backing(verdict)),
  );
}

/**
 * What kind of authority stands behind a verdict, and which: that of common
 * practice says so itself.
 * @param {Verdict} verdict
 */
function backing({ authority = '', source = '' }) {
  return source.startsWith(authority) ? source : `${authority}: ${source}`;
}
