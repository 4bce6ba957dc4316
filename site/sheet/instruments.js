// Instruments for the hand, by what the schema says of an input or a result.

import { dripCounter } from './drips.js';
import { dayStrip } from './days.js';
import { decide } from './decide.js';
import { errands } from './errands.js';
import { jointList } from './joints.js';
import { nutsFromAbove } from './nuts.js';
import { circleOf } from './passes.js';
import { nameOf, inHand } from '../store/shelf.js';
import { revCounter } from './speeds.js';

/** @typedef {import('../../wasm/marinecalc.js').CalculationSchema} CalculationSchema */
/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */

/**
 * The instruments at which inputs are typed.
 * @param {import('../app.js').App} app
 * @param {CalculationSchema} schema
 * @param {import('../form/form.js').Form} form
 */
export function inputInstruments(app, schema, form) {
  const drips = Object.entries(schema.$defs.input.properties ?? {}).filter(([name, { instrument }]) => instrument === 'drips' && form.fields.has(`/${name}`));
  const fields = drips.flatMap(([name]) => form.fields.get(`/${name}`) ?? []);
  return fields.length > 0 ? [dripCounter(app, fields, form.fields.get(`/${drips[0]?.[1].readBy}`))] : [];
}

/**
 * The instruments that show results, in their order.
 * @param {import('../app.js').App} app
 * @param {CalculationSchema} schema
 * @param {Sheet} sheet
 * @param {import('../form/form.js').Form} form
 * @param {string} place the boat
 * @param {(input: string) => unknown} given what was typed or the boat gives of an input
 * @param {(step: string) => void} go to a step of the work, by its id
 * @returns {HTMLElement[]}
 */
export function resultInstruments(app, schema, sheet, form, place, given, go) {
  const decided = form.fields.get('/decided');
  const shown = Object.entries(schema.$defs.result.properties ?? {}).flatMap(([name, { instrument, opens = [] }]) => {
    const table = sheet.tables?.find((t) => t.name === name);
    if (instrument === 'passes') return sheet.results.some((r) => r.name === name) ? circleOf(app, sheet, `${place}/bolts`) : [];
    if (!table) return [];
    if (instrument === 'nuts') return [nutsFromAbove(app, table, given('mounts'), form, place)];
    if (instrument === 'days') return [dayStrip(table, sheet, given('windows'), go)];
    if (instrument === 'errands') return [errands(table, nameOf(inHand().boat))];
    if (instrument === 'joints') return [jointList(table, opens)];
    return instrument === 'speeds' ? [revCounter(table, sheet)] : [];
  });
  return decided && (sheet.procedures ?? []).length > 0 ? [decide(decided), ...shown] : shown;
}
