// What was typed on a sheet, kept with the boat.

import { at, names, withAt } from '../kit/pointer.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ name: string, title: string, pointer: string }} Place */

const LATEST = '/readings/latest/';

/**
 * The typed inputs for which the boat file has a place.
 * @param {Schema} schema of the input
 * @param {Json} typed
 * @returns {Place[]}
 */
export function placesFor(schema, typed) {
  return Object.entries(schema.properties ?? {})
    .filter(([name, { boat }]) => typed[name] !== undefined && boat !== undefined && isPlace(boat))
    .map(([name, { title, boat }]) => ({ name, title: title ?? name, pointer: boat ?? '' }));
}

/**
 * Whether one value can be put there: not in the first reading of a run or
 * its hours, which follow from the dates, nor in the date itself.
 * @param {string} pointer
 */
function isPlace(pointer) {
  return !pointer.startsWith('/readings/') || (pointer.startsWith(LATEST) && pointer !== `${LATEST}date`);
}

/**
 * The boat with what was typed. Readings stand under that day; so does the
 * part of a section that a reading has changed before, since the newest holds.
 * @param {Json} boat
 * @param {Place[]} places
 * @param {Json} typed
 * @param {string} day
 * @returns {Json}
 */
export function remember(boat, places, typed, day) {
  for (const { name, pointer } of places) {
    const readings = /** @type {Json[]} */ (boat.readings ?? []);
    const inReading = pointer.startsWith(LATEST) ? `/${names(pointer).slice(2).join('/')}` : pointer;
    const dated = inReading !== pointer || readings.some((r) => at(r, pointer) !== undefined);
    if (!dated) {
      boat = /** @type {Json} */ (withAt(boat, pointer, typed[name]));
      continue;
    }
    const found = readings.findIndex((r) => r.date === day);
    const i = found < 0 ? readings.length : found;
    if (found < 0) boat = { ...boat, readings: [...readings, { date: day }] };
    boat = /** @type {Json} */ (withAt(boat, `/readings/${i}${inReading}`, typed[name]));
  }
  return boat;
}

/**
 * What was typed and has no place in the boat file.
 * @param {Json} typed
 * @param {Place[]} places
 * @returns {Json}
 */
export function leftOver(typed, places) {
  const kept = new Set(places.map(({ name }) => name));
  return Object.fromEntries(Object.entries(typed).filter(([name]) => !kept.has(name)));
}
