// The newest answers, and home as it was last, kept until something changes of
// what they were made from: they are shown while the calculator starts.

import { forget, keep, recall } from './keep.js';
import { marksKey } from './marks.js';
import { units } from './settings.js';
import { inHand, toSend, typed } from './shelf.js';

const MOST = 6; // answers
const LONG = 200_000; // letters; what is longer is not kept

/**
 * What an answer is made from: the boat in hand, what was typed, units, the
 * calculator, and for home the day.
 * @param {string} id
 * @param {string} build
 * @param {string} [day]
 */
function keyOf(id, build, day) {
  const { id: boat, boat: known } = inHand();
  return marksKey([toSend(known), typed(boat, id), id, day], units(), build);
}

/**
 * @param {string} id of a calculation, or home
 * @param {string} build
 * @param {unknown} answer
 * @param {string} [day]
 */
export function keepAnswer(id, build, answer, day) {
  if (JSON.stringify(answer).length > LONG) return;
  const old = names().filter((n) => n !== id);
  for (const name of old.splice(MOST - 1)) forget(`answer.${name}`);
  if (keep(`answer.${id}`, { key: keyOf(id, build, day), answer })) keep('answers', [id, ...old]);
  else forget(`answer.${id}`);
}

/**
 * @param {string} id
 * @param {string} build
 * @param {string} [day]
 * @returns {any} what was kept, where it would come out the same
 */
export function keptAnswer(id, build, day) {
  const kept = /** @type {any} */ (recall(`answer.${id}`));
  return kept?.key === keyOf(id, build, day) ? kept.answer : undefined;
}

/** @returns {string[]} newest first */
function names() {
  const list = recall('answers');
  return Array.isArray(list) ? list.filter((n) => typeof n === 'string') : [];
}
