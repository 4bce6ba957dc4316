// Two dated states of the boat in hand side by side: what moved by more than
// the gauges explain, and which verdicts turned.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { bound, h } from '../kit/dom.js';
import { lateFold } from '../sheet/folds.js';
import { badge } from '../sheet/verdicts.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend } from '../store/shelf.js';
import { boatOf } from './asks.js';

/** @typedef {import('../../wasm/marinecalc.js').Moved} Moved */

/** @type {import('../app.js').View} */
export function showCompare(app, main) {
  const { boat } = inHand();
  const title = `Before and after: ${nameOf(boat)}`;
  main.append(
    h('h1', {}, title),
    h('p', { class: 'lead' }, 'The boat as it was read up to one day and up to another, and what moved by more than the gauges can explain.'),
  );
  const known = app.calculator.call(boatOf(toSend(boat)));
  main.append(warningList(known, 'h2'));
  if (!known.ok) {
    main.append(...known.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))), h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat')));
    return title;
  }
  const { days = [] } = known;
  if (days.length < 2) {
    main.append(
      h('p', {}, 'This takes readings of two days at least. ', h('a', { href: '#/boat' }, 'Write them down with the boat'), '.'),
    );
    return title;
  }
  const before = choice('compare-before', 'Before', days, days[0]);
  const after = choice('compare-after', 'After', days, days.at(-1));
  const answer = h('div', { class: 'paper', 'aria-live': 'polite' });
  const redraw = () => {
    const reply = app.calculator.call({
      ask: 'compare',
      boat: toSend(boat) ?? {},
      before: before.control.value,
      after: after.control.value,
      units: units(),
    });
    answer.replaceChildren(...(reply.ok ? result(reply.comparison) : reply.problems.map((p) => h('p', { class: 'wrong' }, inWords(p)))));
  };
  before.control.addEventListener('change', redraw);
  after.control.addEventListener('change', redraw);
  main.append(h('div', { class: 'form days' }, before.element, after.element), answer);
  redraw();
  return title;
}

/** @param {import('../../wasm/marinecalc.js').Comparison} found */
function result({ came, gone, turned, moved, still }) {
  return [
    ...[came, gone].flatMap((list, i) =>
      list.length === 0
        ? []
        : [h('h2', {}, i === 0 ? 'Found, and not before' : 'Found before, and no longer'), h('ul', {}, ...list.map((f) => h('li', {}, `${f.sheet}. ${f.title}`)))],
    ),
    h('h2', {}, 'Verdicts that turned'),
    turned.length === 0
      ? h('p', {}, 'None.')
      : h(
          'ul',
          { class: 'glance' },
          ...turned.map((t) =>
            h('li', {}, h('p', {}, badge(t.before, t.beforeReads), ' → ', badge(t.after, t.afterReads)), h('p', {}, bound(`${t.sheet}. ${t.title}: ${t.value}, ${t.bound}.`))),
          ),
        ),
    h('h2', {}, 'Moved'),
    list(moved, 'Nothing moved by more than the gauges explain.'),
    still.length > 0 ? lateFold(`Not moved, as far as the gauges can tell (${still.length})`, () => [list(still, '')]) : '',
  ];
}

/**
 * @param {Moved[]} some
 * @param {string} none
 */
function list(some, none) {
  if (some.length === 0) return h('p', {}, none);
  return h('ul', {}, ...some.map((m) => h('li', {}, bound(`${m.sheet}. ${m.sentence}`))));
}

/**
 * @param {string} id
 * @param {string} label
 * @param {string[]} days
 * @param {string | undefined} chosen
 */
function choice(id, label, days, chosen) {
  const control = h('select', { id }, ...days.map((day) => h('option', { value: day, selected: day === chosen }, day)));
  return { control, element: h('div', { class: 'field' }, h('label', { for: id }, label), control) };
}
