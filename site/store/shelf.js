// The boats kept in this browser, one of which is in hand.

import { keep, recall } from './keep.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ id: string, boat: Json }} Kept */

/** @returns {Kept[]} */
export function boats() {
  const kept = recall('boats');
  return Array.isArray(kept) && kept.every(isKept) && kept.length > 0 ? kept : [{ id: 'first', boat: {} }];
}

/**
 * The boat in hand.
 * @returns {Kept}
 */
export function inHand() {
  const all = boats();
  const id = recall('boat');
  return all.find((k) => k.id === id) ?? /** @type {Kept} */ (all[0]);
}

/** @param {string} id */
export function takeInHand(id) {
  keep('boat', id);
}

/**
 * Puts a boat on the shelf and takes it in hand. Where another is called
 * alike, it gets a number behind its name.
 * @param {Json} boat
 */
export function add(boat) {
  const id = crypto.randomUUID();
  const others = boats().filter((k) => Object.keys(k.boat).length > 0);
  const named = 'name' in boat ? { ...boat, name: unlike(nameOf(boat), others.map((k) => nameOf(k.boat))) } : boat;
  keep('boats', [...others, { id, boat: named }]);
  takeInHand(id);
}

/**
 * Changes the boat in hand. Tells whether the browser kept it.
 * @param {Json} boat
 */
export function change(boat) {
  const { id } = inHand();
  return keep('boats', boats().map((k) => (k.id === id ? { id, boat } : k)));
}

/** Takes the boat in hand off the shelf, with what was typed for it. */
export function remove() {
  const { id } = inHand();
  keep('boats', boats().filter((k) => k.id !== id));
  keep('boat', undefined);
  keep(`typed.${id}`, undefined);
}

/**
 * A name that none of the others has.
 * @param {string} name
 * @param {string[]} others
 */
export function unlike(name, others) {
  for (let n = 2, tried = name; ; n++) {
    if (!others.includes(tried)) return tried;
    tried = `${name} (${n})`;
  }
}

/**
 * What a boat is called.
 * @param {Json} boat
 */
export function nameOf(boat) {
  return typeof boat.name === 'string' && boat.name.trim() !== '' ? boat.name : 'Boat without a name';
}

/**
 * The boat as the calculator takes it: nothing for an empty one, and never
 * without a name.
 * @param {Json} boat
 * @returns {Json | undefined}
 */
export function toSend(boat) {
  return Object.keys(boat).length > 0 ? { ...boat, name: nameOf(boat) } : undefined;
}

/**
 * What was typed for a calculation with the boat in hand.
 * @param {string} calculation
 * @returns {Json}
 */
export function typed(calculation) {
  return allTyped()[calculation] ?? {};
}

/**
 * @param {string} calculation
 * @param {Json} input
 */
export function keepTyped(calculation, input) {
  keep(`typed.${inHand().id}`, { ...allTyped(), [calculation]: input });
}

/**
 * What was typed on the sheets of the boat in hand, by calculation.
 * @returns {{ [calculation: string]: Json }}
 */
export function allTyped() {
  const kept = recall(`typed.${inHand().id}`);
  return isJson(kept) ? /** @type {{ [calculation: string]: Json }} */ (kept) : {};
}

/**
 * @param {unknown} value
 * @returns {value is Kept}
 */
function isKept(value) {
  return isJson(value) && typeof value.id === 'string' && isJson(value.boat);
}

/**
 * @param {unknown} value
 * @returns {value is Json}
 */
export function isJson(value) {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
