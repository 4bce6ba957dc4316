// The header: its menu on a narrow screen, and units and light behind one
// button. Either closes by itself when something else is touched.

import { byId } from './dom.js';

export function openHeader() {
  const pairs = [
    { button: byId('menu', HTMLButtonElement), panel: byId('views', HTMLElement) },
    { button: byId('how', HTMLButtonElement), panel: byId('settings', HTMLElement) },
  ];
  const set = (/** @type {typeof pairs[number]} */ { button, panel }, /** @type {boolean} */ open) => {
    button.setAttribute('aria-expanded', String(open));
    panel.classList.toggle('open', open);
  };
  const isOpen = (/** @type {typeof pairs[number]} */ { button }) => button.getAttribute('aria-expanded') === 'true';
  for (const pair of pairs) {
    pair.button.addEventListener('click', () => {
      const open = !isOpen(pair);
      for (const each of pairs) set(each, each === pair && open);
    });
  }
  document.addEventListener('pointerdown', ({ target }) => {
    for (const pair of pairs) {
      if (target instanceof Node && !pair.panel.contains(target) && !pair.button.contains(target)) set(pair, false);
    }
  });
  document.addEventListener('keydown', ({ key }) => {
    const open = key === 'Escape' && pairs.find(isOpen);
    if (!open) return;
    set(open, false);
    open.button.focus();
  });
  return {
    /**
     * Takes note of the view that is shown.
     * @param {string} boat its name
     */
    shown(boat) {
      for (const pair of pairs) set(pair, false);
      byId('boat-now', HTMLElement).textContent = boat;
    },
  };
}
