// All calculations, by the part of the boat they belong to.

import { h } from '../kit/dom.js';
import { inHand, nameOf } from '../store/shelf.js';
import { begunWork } from './work.js';

/** @type {import('../app.js').View} */
export function showList(app, main) {
  const { calculations, groups, version } = app.contents;
  main.append(
    h('h1', {}, 'Shaft-line work, calculated and shown'),
    h(
      'p',
      { class: 'lead' },
      'Type what you know and read a result with its range, its limit and every step. Nothing leaves this device.',
    ),
    h('p', {}, 'Current boat: ', h('a', { href: '#/boat' }, nameOf(inHand().boat)), '.'),
    ...groups.map(({ title, about, calculations: ids }) => {
      const inside = ids.map((id) => calculations.find((c) => c.id === id)).filter((c) => c !== undefined);
      return h(
        'section',
        { class: 'group-of' },
        h('h2', {}, title),
        h('p', { class: 'help' }, about),
        h(
          'ul',
          { class: 'cards' },
          ...inside.map((c) => h('li', {}, h('a', { href: `#/sheet/${encodeURIComponent(c.id)}` }, c.title), h('p', {}, c.answers))),
        ),
      );
    }),
    begunWork(app),
    h('p', { class: 'help' }, `Version ${version}. `, h('a', { href: '#/checks' }, 'Checks against published values, and licence')),
  );
  return 'Calculations';
}
