// Hazards, with the signal words of ANSI Z535.6. NOTICE alone carries no
// alert sign: it stands for damage, not for injury.

import { h, s } from '../kit/dom.js';

/** @typedef {import('../../wasm/marinecalc.js').Caution} Caution */

/**
 * The cautions by signal word, which come gravest first; null when there are
 * none.
 * @param {Caution[]} cautions
 */
export function cautionList(cautions) {
  const signals = [...new Set(cautions.map((c) => c.signal))];
  if (signals.length === 0) return null;
  return h(
    'ul',
    { class: 'cautions', 'aria-label': 'Cautions' },
    ...signals.map((signal) =>
      h(
        'li',
        { class: `hazard ${signal.toLowerCase()}` },
        h('strong', { class: 'signal' }, signal !== 'NOTICE' && alertSign(), signal),
        h('ul', {}, ...cautions.filter((c) => c.signal === signal).map(item)),
      ),
    ),
  );
}

/**
 * The caution with what it rests on; that of common practice needs no mark at
 * each line, as hazards are the trade's own unless a source is named.
 * @param {Caution} caution
 */
function item({ text, source, basis }) {
  return h('li', {}, text, basis !== 'common-practice' && h('span', { class: 'aside' }, ` (${source})`));
}

function alertSign() {
  return s(
    'svg',
    { class: 'sign', viewBox: '0 0 24 22', 'aria-hidden': 'true' },
    s('path', { d: 'M12 1 L23.5 21 H0.5 Z', fill: 'currentColor' }),
    s('path', { class: 'sign-mark', d: 'M12 8 V14 M12 16.4 V18.6' }),
  );
}
