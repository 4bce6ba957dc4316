// What a sheet asks of the calculator: here, aside, or before it is drawn.

import { today } from '../kit/dates.js';
import { trimmed } from '../kit/pointer.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend, typed } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').CalculationSchema} Schema */

/**
 * @param {string} calculation
 * @param {Json} [boat]
 * @returns {import('../../wasm/marinecalc.js').BlankRequest}
 */
export const blankOf = (calculation, boat) => ({ ask: 'blank', calculation, boat, units: units(), date: today() });

/**
 * @param {string} calculation
 * @param {Json} input
 * @param {Json} [boat]
 * @returns {import('../../wasm/marinecalc.js').RunRequest}
 */
export const runOf = (calculation, input, boat) => ({ ask: 'run', calculation, input, boat, units: units(), date: today() });

/**
 * What a boat would be with those inputs of a calculation kept, today.
 * @param {Json} boat
 * @param {string} calculation
 * @param {Json} input
 * @returns {import('../../wasm/marinecalc.js').KeepRequest}
 */
export const keeping = (boat, calculation, input) => ({ ask: 'keep', boat: toSend(boat) ?? { name: nameOf(boat) }, calculation, input, date: today() });

/** Whether today is asked for; it stands there until another day is typed. @param {Schema} schema */
export const isDated = (schema) => schema.$defs.input.properties?.today !== undefined;

/**
 * @param {Schema} schema
 * @param {string} calculation
 * @returns {Json}
 */
export const typedFor = (schema, calculation) => ({ ...(isDated(schema) && { today: today() }), ...typed(inHand().id, calculation) });

/**
 * What a calculation asks at its first drawing, so that it can be had before;
 * what is typed on another sheet is not in it, and is then asked at the drawing.
 * @param {string} calculation
 * @returns {Generator<import('../../wasm/marinecalc.js').Request, void, any>}
 */
export function* firstOf(calculation) {
  yield { ask: 'contents' };
  const boat = toSend(inHand().boat);
  const blank = yield blankOf(calculation, boat);
  if (blank.ok) yield runOf(calculation, trimmed(typedFor(blank.schema, calculation)) ?? {}, boat);
}
