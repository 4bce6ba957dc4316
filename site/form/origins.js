// Where the values come from that were not typed, in words.

import { at } from '../kit/pointer.js';
import { shown } from './field.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ [name: string]: { text: string, words: string } }} Origins */

/** @type {{ [origin: string]: string }} */
const WORDS = {
  "maker's figure": 'the maker’s figure',
  boat: 'from the boat',
  'earlier result': 'from an earlier sheet',
  'handbook row': 'from the table',
  'usual value': 'usual value',
  default: 'default',
};

/**
 * The origins as the sheet tells them.
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @returns {Origins}
 */
export function originsOf(sheet) {
  return Object.fromEntries(
    (sheet.inputs ?? [])
      .filter((i) => i.origin !== 'typed')
      .map((i) => [i.name, { text: i.text, words: WORDS[i.origin] ?? i.origin }]),
  );
}

/**
 * What can be told before there is a sheet: what stands in the boat file.
 * @param {Schema} schema
 * @param {Json} boat
 * @param {import('../../wasm/marinecalc.js').Choices} choices
 * @returns {Origins}
 */
export function originsInBoat(schema, boat, choices) {
  /** @type {Origins} */
  const found = {};
  for (const [name, input] of Object.entries(schema.properties ?? {})) {
    const value = inBoat(input, boat);
    if (value !== undefined) found[name] = { text: shown(value, input, choices), words: 'from the boat' };
  }
  return found;
}

/**
 * What the boat holds for an input, or undefined.
 * @param {Schema} input
 * @param {Json} boat
 * @returns {unknown}
 */
export function inBoat(input, boat) {
  const latest = input.boat?.match(/^\/readings\/latest\/(.+)$/)?.[1];
  if (latest === undefined) return input.boat === undefined ? undefined : at(boat, input.boat);
  const dated = (Array.isArray(boat.readings) ? boat.readings : []).filter((r) => r?.[latest] !== undefined);
  dated.sort((a, b) => String(a.date).localeCompare(String(b.date)));
  return dated.at(-1)?.[latest];
}
