// What the owner decides, at the answer that it is about: the choices of its
// input side by side. The plan of the work goes by it.

import { button, h } from '../kit/dom.js';

/** @param {import('../form/field.js').Field} field */
export function decide(field) {
  const { control, title } = field;
  const choices = control instanceof HTMLSelectElement ? [...control.options].filter((o) => o.value !== '') : [];
  return h(
    'section',
    { class: 'decide', role: 'group', 'aria-label': title },
    h('h3', {}, title),
    h(
      'div',
      { class: 'choices' },
      ...choices.map((o) => button(o.text, () => field.enter(control.value === o.value ? '' : o.value), { class: 'quiet', 'aria-pressed': String(control.value === o.value), 'data-decide': o.value })),
    ),
  );
}
