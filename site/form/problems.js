// What stands in the way of a sheet or of a sound boat, in one place, each
// with a way to its field; and what the boat file holds that is not used.

import { button, h } from '../kit/dom.js';
import { names } from '../kit/pointer.js';
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
 * @param {(pointer: string) => string | undefined} [titled] what the inputs have as the title of a place in the boat's file
 */
export function summary({ wrong, missing, loose }, level, titled = () => undefined) {
  const mistakes = [
    ...wrong.map(({ control, title, problem }) => h('li', {}, goTo(control, title), ': ', inWords({ ...problem, what: without(problem.what, `${title}: `) }))),
    ...loose.map((problem, i) => {
      const then = loose[i + 1]; // what holds of several is said once, after the last of them
      const isSaid = then && problem.allowed !== '' && then.allowed === problem.allowed && then.hint === problem.hint;
      return h('li', {}, ...looseLine(isSaid ? { ...problem, allowed: '', hint: '' } : problem, titled));
    }),
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
 * @param {(pointer: string) => string | undefined} titled
 */
function looseLine(problem, titled) {
  if (!problem.where.startsWith('/boat')) return [[problem.where, inWords(problem)].filter(Boolean).join(': ')];
  const place = problem.where.slice(5);
  const title = titled(place);
  const says = inWords(problem);
  const way = (/** @type {string} */ words) => h('a', { href: `#/boat${place && '/'}${placeInHash(place)}` }, words);
  return title && says.startsWith(title) ? ['In the boat: ', way(title), says.slice(title.length)] : ['In the boat, ', way(title ?? (place || 'as a whole')), `: ${says}`];
}

/** A place in the boat's file as the hash of the boat's view has it. @param {string} place */
const placeInHash = (place) => encodeURIComponent(names(place).join('.'));

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
