// What was typed on a sheet goes before what the boat has; where the boat was
// read since, that is said beside the field, with a touch to take it.

import { bound, button, h } from '../kit/dom.js';
import { at } from '../kit/pointer.js';

/** @typedef {import('../../wasm/marinecalc.js').Given} Given */

/**
 * Says it beside each input that it is so of; the day it is was never read.
 * @param {import('./form.js').Form} form
 * @param {{ [input: string]: Given }} given by the boat
 * @param {(input: string) => string} typedOn day on which it was typed, empty where that is not known
 * @param {import('./units.js').Reader} read
 * @param {(input: string) => void} take puts what the boat has in its place
 * @returns {(input: string) => void} takes the word away, as of what is typed now
 */
export function tellNewer(form, given, typedOn, read, take) {
  /** @type {Map<string, HTMLElement>} */
  const told = new Map();
  for (const [name, { origin, date = '', text, value }] of Object.entries(given)) {
    const typed = at(form.value, `/${name}`);
    const place = form.placeOf(`/${name}`);
    const day = typedOn(name);
    if (name === 'today' || origin !== 'boat' || date === '' || date < day || typed === undefined || !place || isSame(form, name, typed, text, value, read)) continue;
    const says = date > day ? `The boat has a newer reading: ${date}, ${text}. ` : `The boat has a reading of the same day: ${date}, ${text}. `;
    const note = h('p', { class: 'newer', role: 'note' }, bound(says), button('Use it', () => take(name), { class: 'link', 'aria-label': `Use it: ${text}` }));
    place.querySelector(':scope > .from')?.after(note);
    told.set(name, note);
  }
  return (name) => told.get(name)?.remove();
}

/**
 * Whether what was typed says what the boat has.
 * @param {import('./form.js').Form} form
 * @param {string} name
 * @param {unknown} typed
 * @param {string} text
 * @param {unknown} value
 * @param {import('./units.js').Reader} read
 */
function isSame(form, name, typed, text, value, read) {
  const field = form.fields.get(`/${name}`);
  if (!field) return JSON.stringify(typed) === JSON.stringify(value);
  const { control, schema } = field;
  if (control instanceof HTMLSelectElement) return control.selectedOptions[0]?.text === text;
  if (!schema.quantity) return String(typed) === text;
  const [a, b] = [typed, text.replace(/ \(.*\)$/, '')].map((one) => read.si(one, schema));
  return a !== undefined && b !== undefined ? Math.abs(a - b) <= 1e-9 * Math.abs(b) : String(typed) === text;
}
