// The questions of fault finding: each is answered with yes, no or don't
// know, and with how it was looked at where somebody says; what is not
// answered counts as not asked.

import { h } from '../kit/dom.js';

/** @typedef {import('../../wasm/marinecalc.js').Question} Question */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{answer?: string, by?: string}} Given */

const ANSWERS = [
  ['yes', 'Yes'],
  ['no', 'No'],
  ['unknown', 'Don’t know'],
];

/**
 * The questions in their groups, drawn once; answering one calls changed with
 * all answers.
 * @param {Question[]} questions
 * @param {Json[]} given answers typed before
 * @param {(answers: Json[]) => void} changed
 */
export function questionList(questions, given, changed) {
  /** @type {Map<string, Given>} */
  const answers = new Map(given.map((a) => [String(a.evidence), { answer: String(a.answer), by: a.by ? String(a.by) : undefined }]));
  /** @type {Map<string, Question[]>} */
  const groups = new Map();
  for (const q of questions) {
    const group = groups.get(q.groupTitle) ?? [];
    group.push(q);
    groups.set(q.groupTitle, group);
  }
  const put = (/** @type {string} */ id, /** @type {Given} */ part) => {
    answers.set(id, { ...answers.get(id), ...part });
    changed([...answers].flatMap(([evidence, { answer, by }]) => (answer ? [by ? { evidence, answer, by } : { evidence, answer }] : [])));
  };
  return h(
    'div',
    { class: 'questions' },
    ...[...groups].map(([title, group]) => {
      const open = group.some((q) => answers.has(q.id));
      return h(
        'details',
        { class: 'fold', open },
        h('summary', {}, `${title} (${group.length})`),
        ...group.map((q) => question(q, answers.get(q.id), put)),
      );
    }),
  );
}

/**
 * @param {Question} q
 * @param {Given | undefined} given
 * @param {(id: string, part: Given) => void} put
 */
function question(q, given, put) {
  const set = h('fieldset', { class: 'question' }, h('legend', {}, q.title), q.help && h('p', { class: 'help' }, q.help));
  if (q.kind === 'check') set.append(h('p', { class: 'help' }, `About ${q.minutes} minutes, ${placeInWords(q.place)}.`));
  for (const { signal, text } of q.hazards ?? []) set.append(h('p', { class: `hazard said ${signal.toLowerCase()}` }, h('strong', {}, signal), `: ${text}`));
  const row = h('div', { class: 'choices' });
  for (const [answer = '', words = ''] of ANSWERS) {
    const control = h('input', { type: 'radio', name: `q-${q.id}`, value: answer, checked: given?.answer === answer });
    control.addEventListener('change', () => put(q.id, { answer }));
    row.append(h('label', {}, control, ` ${words}`));
  }
  row.append(wayOfLooking(q, given?.by, put));
  set.append(row);
  return set;
}

/**
 * @param {Question} q
 * @param {string | undefined} given
 * @param {(id: string, part: Given) => void} put
 */
function wayOfLooking(q, given, put) {
  const control = h('select', {}, h('option', { value: '' }, 'not said'), ...q.ways.map((w) => h('option', { value: w.id, selected: w.id === given }, w.title)));
  control.addEventListener('change', () => put(q.id, { by: control.value || undefined }));
  return h('label', { class: 'way' }, 'Looked at how ', control);
}

/** @param {string} place */
function placeInWords(place) {
  return place === 'either' ? 'afloat or ashore' : place;
}
