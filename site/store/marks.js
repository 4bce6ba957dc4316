// How the parts of a boat stand, kept until something of the boat changes: it
// takes all calculations to find out.

import { keep, recall } from './keep.js';

/** @typedef {import('../../wasm/marinecalc.js').PartsState} PartsState */

/** @type {{ key: string, parts: PartsState } | undefined} */
let last;

/**
 * What the parts stand by: boat, units, version and rules.
 * @param {unknown} boat
 * @param {string} units
 * @param {string} version
 */
export function marksKey(boat, units, version) {
  const text = JSON.stringify([boat, units, version]);
  let a = 0x2545f491;
  let b = 0x9e3779b9;
  for (let i = 0; i < text.length; i++) {
    a = Math.imul(a ^ text.charCodeAt(i), 0x85ebca6b);
    b = Math.imul(b ^ text.charCodeAt(i), 0xc2b2ae35);
  }
  return `${text.length}.${(a >>> 0).toString(36)}.${(b >>> 0).toString(36)}`;
}

/**
 * @param {string} key
 * @returns {PartsState | undefined}
 */
export function keptMarks(key) {
  last ??= /** @type {any} */ (recall('marks'));
  return last?.key === key && Array.isArray(last.parts?.parts) ? last.parts : undefined;
}

/**
 * @param {string} key
 * @param {PartsState} parts
 */
export function keepMarks(key, parts) {
  last = { key, parts };
  keep('marks', last);
}
