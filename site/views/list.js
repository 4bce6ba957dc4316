// All calculations, by the part of the boat they belong to.

import { h } from '../kit/dom.js';
import { inHand, nameOf } from '../store/shelf.js';
import { groups } from './groups.js';

/** @type {import('../app.js').View} */
export function showList(app, main) {
  const reply = app.calculator.call({ ask: 'contents' });
  const calculations = reply.ok ? reply.calculations : [];
  const grouped = new Set(groups.flatMap((g) => g.ids));
  const rest = calculations.filter((c) => !grouped.has(c.id)).map((c) => c.id);
  const all = [...groups, { title: 'Other', about: '', ids: rest }];

  main.append(
    h('h1', {}, 'Shaft-line work, calculated and shown'),
    h(
      'p',
      { class: 'lead' },
      'Type what you know and read a result with its range, its limit and every step. Nothing leaves this device.',
    ),
    h('p', {}, 'Boat in hand: ', h('a', { href: '#/boat' }, nameOf(inHand().boat)), '.'),
    ...all.map(({ title, about, ids }) => {
      const inside = ids.map((id) => calculations.find((c) => c.id === id)).filter((c) => c !== undefined);
      return inside.length > 0
        ? h(
            'section',
            { class: 'group-of' },
            h('h2', {}, title),
            about && h('p', { class: 'help' }, about),
            h(
              'ul',
              { class: 'cards' },
              ...inside.map((c) =>
                h(
                  'li',
                  {},
                  h('a', { href: `#/sheet/${encodeURIComponent(c.id)}` }, c.title),
                  h('p', {}, c.answers),
                ),
              ),
            ),
          )
        : '';
    }),
    h('p', { class: 'help' }, reply.ok ? `Version ${reply.version}.` : ''),
  );
  return 'Calculations';
}
