// What is shown while the calculator starts: the answer, or home, as it was
// last, where nothing has changed of what it was made from.

import { today } from '../kit/dates.js';
import { h } from '../kit/dom.js';
import { answerParts } from '../sheet/answer.js';
import { keptAnswer } from '../store/answers.js';
import { keptMarks, marksKey } from '../store/marks.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend } from '../store/shelf.js';
import { dueList, keepStill, lineFigure } from './home.js';
import { keptLeads } from './leads.js';
import { partHead } from './part.js';

/**
 * @param {HTMLElement} main
 * @param {string} view
 * @param {string} name
 * @param {string} build
 * @returns {boolean} whether there is something to show
 */
export function showBefore(main, view, name, build) {
  if (view === 'part') return partHead(main, name) !== undefined;
  return view === 'sheet' ? showAnswer(main, name, build) : view === '' && showLine(main, build);
}

/**
 * @param {HTMLElement} main
 * @param {string} name
 * @param {string} build
 */
function showAnswer(main, name, build) {
  const kept = keptAnswer(name, build);
  if (!kept || (kept.day && kept.day !== today())) return false;
  const fields = h('section', { class: 'known' }, h('p', {}, 'The fields follow.'));
  if (kept.width === innerWidth) fields.style.minHeight = `${kept.tall}px`; // so that the answer stays where it is
  main.replaceChildren(
    h('h1', {}, kept.title),
    h('p', { class: 'lead' }, kept.lead),
    h('div', { class: 'job' }, fields, h('section', { class: 'answer sheet', 'aria-label': 'Answer' }, h('p', { class: 'from' }, 'As last calculated; nothing has changed since.'), ...answerParts(kept.sheet, inHand().id, []))),
  );
  return true;
}

/**
 * @param {HTMLElement} main
 * @param {string} build
 */
function showLine(main, build) {
  const boat = toSend(inHand().boat);
  const kept = boat && keptAnswer('home', build, today());
  if (!kept) return false;
  const figure = lineFigure(kept.line, true);
  const marks = keptMarks(marksKey(boat, units(), build));
  for (const part of marks?.parts ?? []) figure.mark(part);
  main.replaceChildren(h('h1', { class: 'home-title' }, nameOf(boat)), h('div', { class: 'home' }, h('div', { class: 'find' }, h('label', {}, 'Find', h('input', { type: 'search', disabled: true }))), keepStill(marks), figure.element, dueList(kept.line, kept.begun, keptLeads(boat, build))));
  return true;
}
