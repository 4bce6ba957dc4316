// What the views ask of the calculator: here, aside, or before they are drawn.

import { today } from '../kit/dates.js';
import { at, trimmed } from '../kit/pointer.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend, typed } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').CalculationSchema} Schema */

export const FAULT = 'fault-finding';

/** Fault finding goes by the answers, of whatever day they are. @param {string} calculation */
const dayOf = (calculation) => (calculation === FAULT ? undefined : today());

/**
 * @param {string} calculation
 * @param {Json} [boat]
 * @returns {import('../../wasm/marinecalc.js').BlankRequest}
 */
export const blankOf = (calculation, boat) => ({ ask: 'blank', calculation, boat, units: units(), date: dayOf(calculation) });

/**
 * @param {string} calculation
 * @param {Json} input
 * @param {Json} [boat]
 * @returns {import('../../wasm/marinecalc.js').RunRequest}
 */
export const runOf = (calculation, input, boat) => ({ ask: 'run', calculation, input, boat, units: units(), date: dayOf(calculation) });

/**
 * What a boat would be with those inputs of a calculation kept, today.
 * @param {Json} boat
 * @param {string} calculation
 * @param {Json} input
 * @returns {import('../../wasm/marinecalc.js').KeepRequest}
 */
export const keeping = (boat, calculation, input) => ({ ask: 'keep', boat: toSend(boat) ?? { name: nameOf(boat) }, calculation, input, date: today() });

/**
 * What fault finding goes by: the answers typed, or else those of the boat.
 * @param {Json} typed
 * @param {{ [input: string]: import('../../wasm/marinecalc.js').Given }} [given] by the boat
 * @returns {Json}
 */
export const faultInput = (typed, given) => ({ ...(trimmed(typed) ?? {}), answers: typed.answers ?? given?.answers?.value ?? [] });

/** Whether today is asked for; it stands there until another day is typed. @param {Schema} schema */
export const isDated = (schema) => schema.$defs.input.properties?.today !== undefined;

/**
 * @param {Schema} schema
 * @param {string} calculation
 * @returns {Json}
 */
export const typedFor = (schema, calculation) => ({ ...(isDated(schema) && { today: today() }), ...typed(inHand().id, calculation) });

/** @param {Json} [boat] @returns {import('../../wasm/marinecalc.js').LineRequest} */
export const lineOf = (boat) => ({ ask: 'line', boat, units: units(), date: today() });

/** @param {string} part @param {Json} [boat] @returns {import('../../wasm/marinecalc.js').PartRequest} */
export const partOf = (part, boat) => ({ ask: 'part', part, boat, units: units(), date: today() });

/** @param {Json} boat @returns {import('../../wasm/marinecalc.js').ReadingsRequest} */
export const readingsOf = (boat) => ({ ask: 'readings', boat, date: today(), units: units() });

/** @param {Json} [boat] @returns {import('../../wasm/marinecalc.js').ProceduresRequest} */
export const workOf = (boat) => ({ ask: 'procedures', boat });

/** @param {string[]} remedies @param {Json} boat @returns {import('../../wasm/marinecalc.js').ProcedureRequest} */
export const procedureOf = (remedies, boat) => ({ ask: 'procedure', remedies, boat, units: units(), date: today() });

/** @param {Json} [boat] @returns {import('../../wasm/marinecalc.js').BoatRequest} */
export const boatOf = (boat) => ({ ask: 'boat', boat });

const MANY = 300; // readings, from which on the page does not wait for what they say

/** Whether a boat has so many readings that the page does not wait for them. @param {object} boat */
export function isLong(boat) {
  const readings = at(boat, '/readings');
  return Array.isArray(readings) && readings.length > MANY;
}

/** A boat without its dated readings. @param {Json} boat */
export function withoutLog(boat) {
  const { readings: _, ...rest } = boat;
  return rest;
}

/**
 * What a view asks at its first drawing, so that it can be had before. What is
 * left out here is asked at the drawing, as what hangs on other sheets is.
 * @param {string} view
 * @param {string} name
 * @returns {Generator<import('../../wasm/marinecalc.js').Request, void, any>}
 */
export function* firstOf(view, name) {
  const boat = toSend(inHand().boat);
  const long = boat && isLong(boat);
  const short = long ? withoutLog(boat) : boat;
  const sent = boat ?? { name: nameOf({}) };
  if (view === 'sheet') {
    const blank = yield blankOf(name, boat);
    if (name === FAULT) yield lineOf(boat);
    if (blank.ok) yield runOf(name, name === FAULT ? faultInput(typed(inHand().id, FAULT), blank.given) : trimmed(typedFor(blank.schema, name)) ?? {}, boat);
  } else if (view === 'part') return; // its head stands there meanwhile
  else if (view === 'boat') {
    yield boatOf();
    yield lineOf();
  } else if (view === 'readings') {
    yield readingsOf(short ?? sent);
    yield boatOf();
  } else if (view === 'procedure' && name !== '') {
    yield procedureOf(name.split(','), sent);
    yield boatOf(sent);
  } else if (view === 'compare') yield boatOf(boat);
  else if (view === 'checks') return;
  else {
    if (view === '') yield lineOf(short);
    if (!long && (boat || view !== '')) yield workOf(boat);
  }
}
