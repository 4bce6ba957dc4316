// What a screen reader is told without being asked, once typing rests.

import { byId } from './dom.js';

let last = '';
let timer = 0;

/**
 * Says the text politely, unless it was the last thing said.
 * @param {string} text
 */
export function speak(text) {
  clearTimeout(timer);
  timer = setTimeout(() => {
    if (text === last) return;
    last = text;
    byId('spoken', HTMLElement).textContent = text;
  }, 900);
}
