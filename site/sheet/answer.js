// The answer of a sheet: the figure, how it stands to its limit, what can hurt
// now, what to do next.

import { bound, h } from '../kit/dom.js';
import { keep, recall } from '../store/keep.js';
import { cautionList } from './cautions.js';
import { folds } from './folds.js';
import { marksOf, ruler } from './ruler.js';
import { badge, kindOf } from './verdicts.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {import('../../wasm/marinecalc.js').Result} Result */
/** @typedef {import('../../wasm/marinecalc.js').Verdict} Verdict */

/** The result that answers. @param {Sheet} sheet */
export function firstResult(sheet) {
  return (sheet.results ?? []).find((r) => r.level !== 'detail');
}

/** Limits by which readings agree with one another, which says nothing yet of what was read. */
const CLOSES = /-closes?$/;

/**
 * The verdict that decides how the answer is read: the most urgent one, of
 * equal ones that on the answer itself, and where all is well that on the
 * result which stands first. That readings agree alone decides nothing.
 * @param {Sheet} sheet
 * @returns {Verdict | undefined}
 */
export function leadVerdict(sheet) {
  const all = (sheet.verdicts ?? []).filter((v) => v.word !== 'not measured'); // most urgent first
  const well = ['within', 'inside the guide'].includes(all[0]?.word ?? '');
  const judged = all.filter((v) => !well || !CLOSES.test(v.limit));
  const alike = judged.filter((v) => v.word === judged[0]?.word);
  const own = alike.find((v) => v.on === firstResult(sheet)?.name);
  if (own || !well) return own ?? judged[0];
  const place = new Map((sheet.results ?? []).map((r, i) => [r.name, i]));
  const at = (/** @type {Verdict} */ v) => place.get(v.on) ?? Infinity;
  return alike.length > 0 ? alike.reduce((first, v) => (at(v) < at(first) ? v : first)) : undefined;
}

/**
 * @param {Sheet} sheet
 * @param {string} place the boat
 * @param {HTMLElement[]} instruments
 * @param {...HTMLElement} actions
 */
export function answerParts(sheet, place, instruments, ...actions) {
  const first = firstResult(sheet);
  const lead = leadVerdict(sheet);
  const own = (sheet.verdicts ?? []).find((v) => v.on === first?.name && v.word !== 'not measured');
  const marks = marksOf(own ?? lead, (sheet.results ?? []).find((r) => r.name === (own ?? lead)?.on) ?? first);
  return [
    h(
      'div',
      { class: 'answers' },
      first &&
        h(
          'section',
          { class: 'result first', 'data-result': first.name },
          h('h2', { class: 'answer-title' }, first.title),
          ...told(first),
          marks && (own || !lead) && ruler(marks),
        ),
      lead && verdictLine(lead),
      marks && lead && !own && ruler(marks),
      own && own !== lead && verdictLine(own),
    ),
    ...hazards(sheet.cautions ?? [], sheet.calculation),
    ...instruments,
    ...nextSteps(sheet, place),
    actions.length > 0 && h('div', { class: 'tools actions' }, ...actions),
  ];
}

/** @typedef {Result & { ofAnother?: string }} Told with the titles of the picks by which its maker's figure is of another joint */

/**
 * Notes where a pick in front was typed other than the boat has it: the
 * maker's figures in the boat file are of the boat's own.
 * @param {Sheet} sheet
 * @param {string[]} asks
 * @param {{ [input: string]: import('../../wasm/marinecalc.js').Given }} given
 */
export function setApart(sheet, asks, given) {
  const typed = sheet.inputs.filter(({ name, origin, word, text }) => origin === 'typed' && word && asks.includes(name) && given[name]?.origin === 'boat' && given[name].text !== text);
  for (const result of /** @type {Told[]} */ (sheet.results)) result.ofAnother = typed.map((i) => i.title).join(', ');
}

/** The maker's figure, where it is of this joint. @param {Told} result */
export const makerOf = (result) => (result.ofAnother ? undefined : result.maker);

/** What goes for a result: the maker's figure where there is one. @param {Result} result */
export const stands = (result) => makerOf(result)?.text ?? result.text;

/** The maker's figure beside another. @param {Told} result */
export function makerSays({ maker, ofAnother }) {
  return maker && h('p', { class: 'maker' }, h('strong', {}, ofAnother ? `The maker’s ${maker.text} is not for what is typed here: ${ofAnother}. ` : `The maker says ${maker.text}. `), maker.source);
}

/**
 * The figure with its range; the maker's in its place where there is one.
 * @param {Result} first
 */
export function told(first) {
  const range = first.interval && `likely ${first.interval}`;
  const maker = makerOf(first);
  if (!maker) return [figure(first), range && h('p', { class: 'interval' }, bound(range)), makerSays(first)];
  return [
    figure({ ...first, text: maker.text }),
    h('p', { class: 'maker' }, h('strong', {}, 'The maker’s figure. '), `${maker.source}. Calculated: ${bound([first.text, range].filter(Boolean).join(', '))}, and the verdicts are of that.`),
  ];
}

/**
 * The figure, as large as it may be in one piece; the same in other units
 * stands under it.
 * @param {Result} result
 */
export function figure(result) {
  const { length } = result.text;
  if (length > 40 || (!result.kind && length > 10)) return h('p', { class: length > 120 ? 'value words long' : 'value words' }, result.text);
  const [, main = result.text, other] = /^(.*?) (\(.*\))$/.exec(result.text) ?? [];
  const made = h('p', { class: 'value' }, h('span', { class: 'one-piece' }, main), other && ' ', other && h('span', { class: 'also' }, other));
  made.style.setProperty('--letters', String(Math.max(main.length, 4)));
  return made;
}

/** @param {Verdict} v */
export function verdictLine(v) {
  return h(
    'div',
    { class: `verdict ${kindOf(v.word)}`, 'data-limit': v.limit },
    h('p', {}, h('span', { class: 'word' }, badge(v.word, v.reads)), ' ', said(v)),
    v.settle && h('p', { class: 'settle' }, v.settle),
  );
}

/**
 * What was held against what; in full where that is no plain OK. The bound says its side.
 * @param {Verdict} v
 */
function said(v) {
  if (['within', 'near the limit', 'inside the guide'].includes(v.word) && v.value) {
    return bound(`${v.title}: ${v.value}, ${v.bound}`);
  }
  return bound(v.sentence);
}

/**
 * What applies now in full, and the rest behind one line.
 * @param {import('../../wasm/marinecalc.js').Caution[]} cautions gravest first
 * @param {string} place
 */
export function hazards([now, ...others], place) {
  if (!now) return [];
  const rest = cautionList(others);
  const shown = /** @type {HTMLElement[]} */ ([cautionList([now])]);
  if (rest) shown.push(folds(place)(`${others.length} more ${others.length > 1 ? 'hazards' : 'hazard'} of this work`, rest));
  return shown;
}

/**
 * What to do next, to be ticked off; ticks stay with the browser.
 * @param {Sheet} sheet
 * @param {string} place the boat
 */
function nextSteps(sheet, place) {
  const steps = sheet.next ?? [];
  if (steps.length === 0) return [];
  const key = `ticked.${place}.${sheet.calculation}`;
  const kept = recall(key);
  const ticked = new Set(Array.isArray(kept) ? kept : []);
  return [
    h(
      'section',
      { class: 'next' },
      h('h3', {}, 'Next'),
      h(
        'ul',
        { class: 'ticks' },
        ...steps.map(({ text }) => {
          const box = h('input', { type: 'checkbox', checked: ticked.has(text) });
          box.addEventListener('change', () => {
            if (box.checked) ticked.add(text);
            else ticked.delete(text);
            keep(key, [...ticked].filter((t) => steps.some((n) => n.text === t)));
          });
          return h('li', {}, h('label', {}, box, h('span', {}, bound(text))));
        }),
      ),
    ),
  ];
}
