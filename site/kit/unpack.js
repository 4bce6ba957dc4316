// The data that this file carries with it: gzipped, in letters, in an element
// that no browser runs.

import { byId } from './dom.js';
import { fromLetters } from './letters.js';

/**
 * The data of the element with that id, which is taken out of the page.
 * @param {string} id
 * @param {string} type
 */
export function unpack(id, type) {
  const element = byId(id, HTMLScriptElement);
  const bytes = fromLetters(element.text, Number(element.dataset.size));
  element.remove();
  const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  return new Response(plain, { headers: { 'Content-Type': type } });
}
