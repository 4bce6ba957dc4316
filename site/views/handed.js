// What is typed on one sheet and counts on the next, before it is kept with the boat.

import { today } from '../kit/dates.js';
import { trimmed } from '../kit/pointer.js';
import { isPlain } from '../store/merge.js';
import { days, inHand, typed } from '../store/shelf.js';
import { FAULT, faultInput, keeping, runOf } from './asks.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/** By boat and sheet: the sheet from which it was opened, and what is typed there counts. @type {Map<string, string>} */
export const openedFrom = new Map();

/**
 * The boat as it would be with what is typed kept of the sheets that lead to
 * one, and of which sheets that is something: those typed on today, and the one
 * that it was opened from. What was typed on another day may be out of date.
 * @param {import('../app.js').App} app
 * @param {string} calculation
 */
export function handedTo(app, calculation) {
  const { id, boat } = inHand();
  const typedOn = days(id);
  /** @type {{ boat?: Json, from: typeof app.contents.calculations, apart?: boolean }} whether the boat's choice is of other work than what is found */
  const handed = { from: [] };
  for (const c of app.contents.calculations.filter((c) => c.onward?.includes(calculation))) {
    if (typedOn[c.id] !== today() && openedFrom.get(`${id}/${calculation}`) !== c.id) continue;
    const reply = app.calculator.call(keeping(handed.boat ?? boat, c.id, trimmed(typed(id, c.id)) ?? {}));
    if (!reply.ok || (reply.kept ?? []).length === 0) continue;
    handed.boat = reply.boat;
    handed.from.push(c);
  }
  if (calculation === 'repair-or-replace' && handed.boat?.choice && handed.from.some((c) => c.id === FAULT)) {
    const found = app.calculator.call(runOf(FAULT, faultInput(typed(id, FAULT)), handed.boat));
    const cures = (found.ok && found.sheet.procedures) || [];
    const { choice, ...rest } = handed.boat;
    const others = isPlain(choice) && cures.length > 0 && !cures.some((cure) => [choice['repairWork'], choice['replaceWork']].includes(cure));
    if (others) Object.assign(handed, { boat: rest, apart: true });
  }
  return handed;
}
