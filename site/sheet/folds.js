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

/**
 * A fold whose inside is made when it is first opened, and which stays off the
 * paper.
 * @param {string | Node} title
 * @param {() => (Node | string)[]} inside
 */
export function lateFold(title, inside) {
  const made = h('details', { class: 'fold unprinted' }, h('summary', {}, title));
  made.addEventListener('toggle', () => {
    if (made.open && made.childElementCount === 1) made.append(...inside());
  });
  return made;
}

/** Brings what a touch opened out from under the foot of the screen. */
export function showWhatOpens() {
  document.addEventListener('click', ({ target }) => {
    const fold = target instanceof Element && target.closest('summary')?.parentElement;
    if (fold instanceof HTMLDetailsElement && !fold.open) fold.addEventListener('toggle', () => fold.scrollIntoView({ block: 'nearest' }), { once: true });
  });
}

/** Opens every fold while the page is printed. */
export function openFoldsForPrint() {
  /** @type {HTMLDetailsElement[]} */
  let closed = [];
  addEventListener('beforeprint', () => {
    closed = [...document.querySelectorAll('details')].filter((d) => !d.open && !d.classList.contains('unprinted'));
    for (const fold of closed) fold.open = true;
  });
  addEventListener('afterprint', () => {
    for (const fold of closed) fold.open = false;
  });
}
