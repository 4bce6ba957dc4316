// Files handed to the person.

import { h } from '../kit/dom.js';
import { forFile } from './names.js';
import { nameOf } from './shelf.js';

export { forFile };

/**
 * Saves the text as a file of that name.
 * @param {string} name
 * @param {string} type
 * @param {string} text
 */
export function saveFile(name, type, text) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  const by = document.activeElement;
  if (by?.nextElementSibling?.classList.contains('saved')) by.nextElementSibling.remove();
  if (by instanceof HTMLButtonElement) by.after(h('span', { class: 'saved', role: 'status' }, `Saved: ${name}`));
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * Hands a boat to the person as a file.
 * @param {import('../../wasm/marinecalc.js').Json} boat
 */
export function saveBoat(boat) {
  saveFile(`${forFile(nameOf(boat))}.boat.json`, 'application/json', `${JSON.stringify(boat, null, 2)}\n`);
}
