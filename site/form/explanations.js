// Whether forms show their explanations: at first where there is space, then
// as the person wants it. Screen readers tell them either way.

import { button } from '../kit/dom.js';
import { keep, recall } from '../store/keep.js';

/**
 * The button that shows or hides the explanations of a form's parts.
 * @param {...HTMLElement} forms
 */
export function explanationsButton(...forms) {
  const kept = recall('explain');
  let explain = typeof kept === 'boolean' ? kept : matchMedia('(min-width: 60rem)').matches;
  const show = () => {
    for (const form of forms) form.classList.toggle('terse', !explain);
    made.textContent = explain ? 'Hide the explanations' : 'Show the explanations';
  };
  const made = button(
    '',
    () => {
      explain = !explain;
      keep('explain', explain);
      show();
    },
    { class: 'quiet' },
  );
  show();
  return made;
}
