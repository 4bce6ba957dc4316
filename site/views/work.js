// All work that there is, by the part of the drivetrain that it is on.

import { inWords } from '../form/field.js';
import { button, h } from '../kit/dom.js';
import { isPast } from '../sheet/verdicts.js';
import { inHand, keepTyped, nameOf, toSend, typed } from '../store/shelf.js';
import { workOf } from './asks.js';

/** @typedef {import('../../wasm/marinecalc.js').ListedWork} ListedWork */

/**
 * @param {import('../app.js').App} app
 * @param {HTMLElement} main
 */
export function workList(app, main) {
  const reply = app.calculator.call(workOf(toSend(inHand().boat)));
  main.append(
    h('h1', {}, 'Work, step by step'),
    h('p', { class: 'lead' }, `Each piece with the figures, cautions and limits of ${nameOf(inHand().boat)}, to be ticked off.`),
  );
  if (!reply.ok) {
    main.append(...reply.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
    return 'Work';
  }
  const begun = reply.procedures.flatMap((p) => p.work.filter((w) => w.ticked > 0));
  const together = h('p', {});
  /** @type {Set<string>} */
  const picked = new Set();
  const pick = (/** @type {ListedWork} */ w) => {
    const box = h('input', { type: 'checkbox', 'aria-label': `Do together: ${w.title}` });
    box.addEventListener('change', () => {
      if (box.checked) picked.add(w.id);
      else picked.delete(w.id);
      together.replaceChildren(
        ...(picked.size > 1 ? [button(`Do these ${picked.size} together`, () => (location.hash = `#/procedure/${[...picked].join(',')}`))] : []),
      );
    });
    return h('label', { class: 'together' }, box, h('span', { 'aria-hidden': 'true' }, 'together'));
  };
  main.append(
    ...(begun.length > 0 ? [h('section', {}, h('h2', {}, 'Begun'), h('ul', { class: 'cards' }, ...begun.map((w) => card(w))))] : []),
    ...reply.procedures.map(({ part, work }) =>
      h('section', { class: 'group-of' }, h('h2', {}, part), h('ul', { class: 'cards work-cards' }, ...work.map((w) => card(w, pick(w))))),
    ),
    h('div', { class: 'picked' }, together),
  );
  return 'Work';
}

/**
 * @param {ListedWork} w
 * @param {HTMLElement} [pick]
 */
function card(w, pick) {
  return h(
    'li',
    {},
    h('a', { href: `#/procedure/${w.id}` }, w.title),
    h('p', {}, w.ticked > 0 ? `${w.ticked} of ${w.steps} ticked off. ` : w.steps === 1 ? '1 step. ' : `${w.steps} steps. `, w.text),
    pick,
  );
}

/**
 * Links to the work that a sheet chooses or weighs, or, where something is past
 * its limit, to that on its part which goes by it.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 */
export function workLinks(app, sheet) {
  const { calculation, procedures, verdicts = [] } = sheet;
  if (!procedures && !verdicts.some((v) => isPast(v.word))) return [];
  const of = procedures ? '' : calculation;
  const place = h('section', { class: 'to-work' });
  const show = (/** @type {ListedWork[]} */ work) => {
    const found = procedures ? procedures.flatMap((id) => work.filter((w) => w.id === id)) : work;
    if (found.length === 0) return place.remove();
    const planned = calculation === 'work-plan' && found.length > 1;
    place.append(
      h('h3', {}, 'Do it step by step'),
      h(
        'ul',
        { class: 'cards' },
        planned && h('li', {}, h('a', { href: `#/procedure/${found.map((w) => w.id).join(',')}` }, 'All of it together')),
        ...found.slice(0, 8).map((w) => (procedures ? card(w) : h('li', {}, h('a', { href: `#/procedure/${w.id}` }, w.title)))),
      ),
    );
  };
  const known = listed.get(of);
  if (known) show(known);
  else {
    void app.ask({ ask: 'procedures', ...(of && { calculation: of }) }).then((reply) => {
      if (!reply.ok) return place.remove();
      const work = reply.procedures.flatMap((p) => p.work);
      listed.set(of, work);
      show(work);
    });
  }
  return known && place.childElementCount === 0 ? [] : [place];
}

/** What work there is, of no boat, and so the same at every key: by the calculation that it goes by, all under none. @type {Map<string, ListedWork[]>} */
const listed = new Map();

/**
 * Links to the sheets that one opens after another, as the work goes.
 * @param {import('../app.js').App} app
 * @param {string[]} [onward] their ids
 * @param {(id: string) => void} [opened] told which is gone to
 */
export function onwardLinks(app, onward = [], opened) {
  return onward.flatMap((to) => app.contents.calculations.filter((c) => c.id === to)).map((c) => {
    const way = h('a', { class: 'action', href: `#/sheet/${c.id}` }, c.title);
    if (opened) way.addEventListener('click', () => opened(c.id));
    return way;
  });
}

/**
 * Goes to a step of the work that a plan has, where its figures and its tick are.
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @param {string} step by its id
 */
export function toStep(sheet, step) {
  stepWanted.id = step;
  location.hash = `#/procedure/${(sheet.procedures ?? []).join(',')}`;
}

/**
 * Goes to the plan of that work: its days, a haul-out, what to buy, the calendar.
 * @param {string[]} remedies
 */
export function planIt(remedies) {
  const { id } = inHand();
  keepTyped(id, 'work-plan', { ...typed(id, 'work-plan'), remedies: remedies.map((remedy) => ({ remedy })) });
  location.hash = '#/sheet/work-plan';
}

/** The step at which the next work that is shown opens. */
export const stepWanted = { id: '' };

/**
 * What is begun on the boat in hand.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').ProceduresReply | import('../../wasm/marinecalc.js').Refusal} [reply] where it was asked for before
 */
export function begunOn(app, reply = app.calculator.call(workOf(toSend(inHand().boat)))) {
  return reply.ok ? reply.procedures.flatMap((p) => p.work.filter((w) => w.ticked > 0)) : [];
}

/**
 * The way to the work, with what is begun on the boat in hand.
 * @param {import('../app.js').App} app
 * @param {ListedWork[]} [begun]
 */
export function begunWork(app, begun = begunOn(app)) {
  return h(
    'section',
    { class: 'group-of to-work' },
    h('h2', {}, 'Work'),
    h('p', { class: 'help' }, 'Any cure step by step, with this boat’s figures, to be ticked off.'),
    h(
      'ul',
      { class: 'cards' },
      ...begun.map((w) => card(w)),
      h('li', {}, h('a', { href: '#/procedure' }, 'All work, by part'), h('p', {}, 'Mounts, gearbox, coupling, shaft, gland, propeller.')),
    ),
  );
}
