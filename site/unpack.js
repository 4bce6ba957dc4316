// The data that this file carries with it: packed, in letters, in an element
// that no browser runs.

import { crc32 } from './crc32.js';
import { byId } from './dom.js';
import { fromLetters } from './letters.js';
import { fromLzma } from './lzma.js';

/**
 * The data of the element with that id, which is taken out of the page.
 * @param {string} id
 * @param {string} type
 */
export function unpack(id, type) {
  const element = byId(id, HTMLScriptElement);
  const bytes = fromLetters(element.text, Number(element.dataset.size));
  element.remove();
  if (crc32(bytes) !== Number(element.dataset.crc32)) throw new Error('This file is damaged. Take a fresh copy of it.');
  return new Response(fromLzma(bytes), { headers: { 'Content-Type': type } });
}
