// Folds that stay as the person left them when the sheet is drawn anew, and
// that all open for the printer.

import { h } from '../kit/dom.js';

/** @type {Set<string>} */
const opened = new Set();

/**
 * A maker of folds that belong to one place of the page.
 * @param {string} place
 */
export function folds(place) {
  /**
   * @param {string} title
   * @param {...Node} inside
   */
  return (title, ...inside) => {
    const key = `${place}/${title}`;
    const made = h('details', { class: 'fold', open: opened.has(key) }, h('summary', {}, title), ...inside);
    made.addEventListener('toggle', () => {
      if (made.open) opened.add(key);
      else opened.delete(key);
    });
    return made;
  };
}

/** Opens every fold while the page is printed. */
export function openFoldsForPrint() {
  /** @type {HTMLDetailsElement[]} */
  let closed = [];
  addEventListener('beforeprint', () => {
    closed = [...document.querySelectorAll('details')].filter((d) => !d.open);
    for (const fold of closed) fold.open = true;
  });
  addEventListener('afterprint', () => {
    for (const fold of closed) fold.open = false;
  });
}
