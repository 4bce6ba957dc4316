// A ruler under the answer: where the value lies, how far it may be off, and
// where the limit is. Lines and hatching, so that it prints and needs no colour.

import { h, s } from '../kit/dom.js';

/**
 * What stands on a ruler, in one unit.
 * @typedef {object} Marks
 * @property {number} value
 * @property {string} text
 * @property {number} [low]
 * @property {number} [high]
 * @property {number} [bound]
 * @property {string} [boundText] with its side
 * @property {string} [side] "at most" or "at least"
 */

/**
 * Its marks as a verdict has them, with the range of the result that it is on;
 * null where there is nothing to draw.
 * @param {import('../../wasm/marinecalc.js').Verdict | undefined} verdict
 * @param {import('../../wasm/marinecalc.js').Result | undefined} result
 * @returns {Marks | null}
 */
export function marksOf(verdict, result) {
  const of = result && (!verdict || result.name === verdict.on) ? result : undefined;
  const range = { low: of?.low, high: of?.high };
  if (verdict?.si !== undefined && verdict.boundSI !== undefined) {
    return { ...range, value: verdict.si, text: verdict.value ?? '', bound: verdict.boundSI, boundText: verdict.bound, side: verdict.side };
  }
  return of?.si !== undefined && range.low !== undefined ? { ...range, value: of.si, text: of.text } : null;
}

/** @param {Marks} marks */
export function ruler(marks) {
  const [from, to] = ends(marks);
  const at = (/** @type {number} */ x) => Math.max(0, Math.min(100, (100 * (x - from)) / (to - from)));
  const { value, text, low = value, high = value, bound, boundText = '', side } = marks;
  const band = at(high) - at(low);
  const past = bound === undefined ? null : side === 'at least' ? [0, at(bound)] : [at(bound), 100];
  const drawn = s(
    'svg',
    { viewBox: '0 0 100 24', preserveAspectRatio: 'none' },
    past && s('path', { class: 'past', d: hatched(past[0] ?? 0, past[1] ?? 0) }),
    s('path', { class: 'line', d: 'M0 12 H100' }),
    band > 0.5 && s('rect', { class: 'band', x: at(low), y: 8, width: band, height: 8 }),
    bound !== undefined && s('path', { class: 'bound', d: `M${at(bound)} 0 V24` }),
    s('path', { class: 'mark', d: `M${at(value)} 2 V22` }),
  );
  return h(
    'div',
    { class: 'ruler', 'aria-hidden': 'true' },
    tag(text, at(value), 'value-tag'),
    drawn,
    bound !== undefined && tag(boundText, at(bound), 'bound-tag'),
  );
}

/**
 * Words at a place of the ruler that never hang over its ends.
 * @param {string} text
 * @param {number} place in per cent
 * @param {string} kind
 */
function tag(text, place, kind) {
  const made = h('span', { class: kind }, text);
  made.style.left = `${place}%`;
  made.style.transform = `translateX(-${place}%)`;
  return h('div', { class: 'tags' }, made);
}

/**
 * Slanted strokes from one place to another.
 * @param {number} from
 * @param {number} to
 */
function hatched(from, to) {
  let d = '';
  for (let x = from; x < to - 1; x += 3) d += `M${x} 18 L${Math.min(x + 1.5, to)} 6`;
  return d;
}

/**
 * Both ends: from nothing where all is positive, with room behind the last
 * mark. A value far off the limit does not push the limit into a corner.
 * @param {Marks} marks
 * @returns {[number, number]}
 */
function ends({ value, low = value, high = value, bound = value }) {
  const all = [value, low, high, bound];
  const most = Math.max(value, bound);
  const up = Math.min(Math.max(...all), most + 1.5 * Math.abs(most) + 1e-12);
  const least = Math.min(...all);
  const down = least >= 0 ? 0 : Math.max(least, -2.5 * Math.max(Math.abs(value), Math.abs(bound)) - 1e-12);
  const room = 0.15 * (up - down || 1);
  return [down < 0 ? down - room : 0, up > 0 ? up + room : room];
}
