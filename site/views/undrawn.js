// What is shown in place of a view that cannot be drawn: the boat as a file,
// and the way to the others.

import { button, h } from '../kit/dom.js';
import { saveBoat } from '../store/files.js';
import { add, boats, inHand, nameOf, remove, takeInHand } from '../store/shelf.js';

/**
 * @param {HTMLElement} main
 * @param {unknown} error
 * @param {() => void} again draws the view anew
 */
export function undrawn(main, error, again) {
  const { id, boat } = inHand();
  const name = nameOf(boat);
  const others = boats().filter((k) => k.id !== id);
  main.replaceChildren(
    h('h1', {}, 'This could not be shown'),
    h('p', {}, `Something in ${name} cannot be drawn here (${error}). Nothing of it is lost, and no other boat is touched.`),
    h(
      'div',
      { class: 'tools' },
      button(`Save ${name} to a file`, () => saveBoat(boat)),
      ...others.map((k) =>
        button(`Go to ${nameOf(k.boat)}`, () => {
          takeInHand(k.id);
          again();
        }),
      ),
      button('New boat', () => {
        add({});
        again();
      }),
      button(`Remove ${name}, once it is saved`, () => {
        remove(id);
        again();
      }),
    ),
  );
  return 'This could not be shown';
}
