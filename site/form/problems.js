// What stands in the way of a sheet or of a sound boat, in one place, each
// with a way to its field; and what the boat file holds that is not used.

import { button, h } from '../kit/dom.js';
import { inWords } from './field.js';
import { visit } from './visit.js';

/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */

/**
 * What is wrong, with its place; what is only missing; what has no place here.
 * @typedef {object} Taken
 * @property {{ control: HTMLElement, title: string, problem: Problem }[]} wrong
 * @property {{ control: HTMLElement, title: string, name?: string }[]} missing name: without its row
 * @property {Problem[]} loose
 */

/**
 * @param {Taken} taken
 * @param {'h2' | 'h3'} level of the headings
 */
export function summary({ wrong, missing, loose }, level) {
  const mistakes = [
    ...wrong.map(({ control, title, problem }) => h('li', {}, goTo(control, title), ': ', inWords({ ...problem, what: without(problem.what, `${title}: `) }))),
    ...loose.map((problem) => h('li', {}, ...looseLine(problem))),
  ];
  return h(
    'div',
    { class: 'summary' },
    mistakes.length > 0 && h(level, {}, 'To correct'),
    mistakes.length > 0 && h('ul', { class: 'wrong-list' }, ...mistakes),
    missing.length > 0 && h(level, {}, 'Still needed'),
    missing.length > 0 && h('ul', {}, ...gathered(missing).map(({ control, title }) => h('li', {}, goTo(control, title)))),
  );
}

/**
 * What is missing, with all that several rows of a list lack in one line.
 * @param {Taken['missing']} missing
 */
function gathered(missing) {
  const ofList = (/** @type {HTMLElement} */ control) => control.closest('.row')?.closest('fieldset');
  return missing.flatMap(({ control, title }, i) => {
    const list = ofList(control);
    const alike = list ? missing.filter((m) => ofList(m.control) === list) : [];
    if (alike.length < 2) return [{ control, title }];
    const names = [...new Set(alike.map((m) => (m.name ?? m.title).toLowerCase()))].join(', ');
    return alike[0] === missing[i] ? [{ control, title: `${list?.dataset.title}: ${names}` }] : [];
  });
}

/**
 * What the boat file holds that is not used, as a reply tells it, answered or
 * refused; empty when there is nothing.
 * @param {{ ok: boolean, warnings?: import('../../wasm/marinecalc.js').Problem[] }} reply
 * @param {'h2' | 'h3'} level of the heading
 */
export function warningList({ warnings = [] }, level) {
  if (warnings.length === 0) return '';
  return h(
    'section',
    { 'aria-labelledby': 'unused-title' },
    h(level, { id: 'unused-title' }, 'To check in the boat file'),
    h('ul', { class: 'wrong-list' }, ...warnings.map((w) => h('li', {}, `${w.where.replace(/^\/boat/, '')}: ${inWords(w)}`))),
  );
}

/**
 * A problem that no field of this form can mend.
 * @param {import('../../wasm/marinecalc.js').Problem} problem
 */
function looseLine(problem) {
  if (!problem.where.startsWith('/boat')) return [[problem.where, inWords(problem)].filter(Boolean).join(': ')];
  return ['In the ', h('a', { href: '#/boat' }, 'boat'), `, ${problem.where.slice(5)}: ${inWords(problem)}`];
}

/**
 * A text that may begin with what stands before it already.
 * @param {string} text
 * @param {string} beginning
 */
function without(text, beginning) {
  return text.startsWith(beginning) ? text.slice(beginning.length) : text;
}

/**
 * @param {HTMLElement} control
 * @param {string} title
 */
function goTo(control, title) {
  return button(title, () => visit(control), { class: 'link' });
}

/**
 * Takes an error away once something is typed or chosen beside it: who works on
 * has read it, and a file can be opened again.
 * @param {HTMLElement} said where it stands
 */
export function goneWhenTyped(said) {
  const gone = (/** @type {Event} */ event) => {
    if (!said.isConnected) removeEventListener('input', gone);
    else if (!(event.target instanceof HTMLInputElement && event.target.type === 'file')) said.replaceChildren();
  };
  addEventListener('input', gone);
}
