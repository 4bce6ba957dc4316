// One step of the work: what can hurt first, then how it is done with this
// boat's figures, what is written down, and last the tick.

import { Form } from '../form/form.js';
import { inWords } from '../form/field.js';
import { resolved } from '../form/rows.js';
import { at } from '../kit/pointer.js';
import { button, h } from '../kit/dom.js';
import { cautionList } from '../sheet/cautions.js';
import { drawing, listed } from '../sheet/sheet.js';
import { boltCircle } from '../sheet/passes.js';
import { badge } from '../sheet/verdicts.js';
import { units } from '../store/settings.js';

/** @typedef {import('../../wasm/marinecalc.js').WorkStep} WorkStep */
/** @typedef {import('../../wasm/marinecalc.js').StepRecord} StepRecord */
/** @typedef {import('../../wasm/marinecalc.js').StepFigure} StepFigure */
/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */

/**
 * What a step may need to know of the whole.
 * @typedef {object} Whole
 * @property {import('../../wasm/marinecalc.js').Procedure} work
 * @property {WorkStep[]} steps
 * @property {import('../../wasm/marinecalc.js').BoatReply} [schema] the form of the boat file
 * @property {import('../form/units.js').Reader} read
 * @property {string[]} remedies
 * @property {string} id of the boat
 */

/**
 * What can be done at a step.
 * @typedef {object} Acts
 * @property {(step: WorkStep, what: { note?: string, record?: { title: string, value?: any }[] }, words: string) => import('../../wasm/marinecalc.js').Problem[]} happened
 * @property {(step: WorkStep, ticked: boolean) => void} tick
 * @property {(title: string, ...inside: Node[]) => HTMLElement} fold
 */

const SHORT = 8; // rows of a list that stand at a step in full
const LONG = 24; // letters of a last reading that is not printed
const PAUSE = 700; // ms without a key, until what was typed is kept

/**
 * @param {WorkStep} step
 * @param {Whole} all
 * @param {Map<string, number>} told the step at which each caution, each drawing and each reading stands on paper
 * @param {Acts} acts
 * @returns {Node[]}
 */
export function stepParts(step, all, told, acts) {
  const { pictures = [], needs = [] } = all.work.drawings.find((d) => d.calculation === step.drawing) ?? {};
  const shownBefore = step.drawing ? told.has(step.drawing) : false;
  if (step.drawing && !shownBefore) told.set(step.drawing, step.number);
  const open = step.after.filter((n) => !all.steps[n - 1]?.tick);
  const parts = [
    step.hold && h('p', { class: 'wrong' }, step.hold),
    step.once && h('p', { class: 'move' }, h('strong', {}, step.once)),
    hazards(step, told),
    step.move && h('p', { class: 'move' }, h('strong', {}, step.move)),
    step.safe && h('p', {}, step.safe),
    h('p', { class: 'how' }, step.text),
    step.note && h('p', { class: 'help' }, step.note),
    h(
      'p',
      { class: 'meta' },
      `${hours(step.hours)}, ${hours(step.longHours)} when it does not go smoothly; ${step.place}`,
      step.waitDays > 0 && `; then wait ${step.waitDays === 1 ? 'a day' : `${step.waitDays} days`}`,
      '.',
    ),
    step.due && h('p', { class: 'due' }, h('strong', {}, 'Due: '), step.due.text, '.'),
    step.tools.length > 0 && h('p', { class: 'tool-line' }, h('strong', {}, 'Tools: '), step.tools.join(', '), '.'),
    step.parts.length > 0 &&
      h('ul', { class: 'takes' }, ...step.parts.map((p) => h('li', {}, h('strong', {}, `${p.title}: ${p.amount}`), p.size && `; ${p.size}`, p.note && h('span', { class: 'aside' }, ` ${p.note}`)))),
    step.figures.length > 0 && h('div', { class: 'answers' }, ...step.figures.map((f) => figure(f, step.number, told, acts.fold))),
    step.tightening && h('p', { class: 'tightening' }, h('strong', {}, 'Tightening. '), step.tightening.text),
    step.tightening && step.tightening.passes.length > 1 && step.tightening.order.length > 0 && boltCircle(step.tightening, `${all.id}/${step.id}`),
    pictures.length > 0
      ? h('div', { class: shownBefore ? 'pictures again' : 'pictures', 'data-drawing': step.drawing }, ...pictures.map(drawing))
      : needs.length > 0 && h('p', { class: 'help' }, `There is no picture yet: it needs ${needs.join(', ').toLowerCase()}.`),
    step.records.length > 0 && h('div', { class: 'records' }, h('h3', {}, 'Write down'), ...step.records.map((r) => record(step, r, all, told, acts))),
    step.bares.length > 0 &&
      h(
        'div',
        { class: 'bares' },
        h('h3', {}, 'Cheap while it lies open'),
        h('ul', {}, ...step.bares.map((b) => h('li', {}, h('a', { href: `#/procedure/${[...all.remedies, b.id].join(',')}` }, b.title)))),
      ),
    note(step, acts),
    open.length > 0 && !step.tick && h('p', { class: 'before' }, `Not ticked off yet, and before this: ${open.map((n) => `${n} ${all.steps[n - 1]?.title}`).join('; ')}.`),
    step.tick
      ? button('Take the tick back', () => acts.tick(step, false), { class: 'quiet' })
      : button(`Done: tick off step ${step.number}`, () => acts.tick(step, true), { class: 'tick' }),
  ];
  return [h('div', { class: 'step-body' }, ...parts)];
}

/**
 * The cautions of a step in full. On paper the step is named at which one stands
 * already.
 * @param {WorkStep} step
 * @param {Map<string, number>} told
 */
function hazards(step, told) {
  const list = cautionList(step.cautions);
  if (!list) return null;
  const items = list.querySelectorAll(':scope > li > ul > li');
  const earlier = step.cautions.flatMap((c, i) => {
    const at = told.get(c.text);
    if (at === undefined) told.set(c.text, step.number);
    else items[i]?.classList.add('again');
    return at === undefined ? [] : [at];
  });
  const steps = [...new Set(earlier)].sort((a, b) => a - b);
  for (const hazard of list.children) {
    if (!hazard.querySelector('ul > li:not(.again)')) hazard.classList.add('again');
  }
  return h('div', {}, list, steps.length > 0 && h('p', { class: 'paper-only' }, `Hazards as at step ${steps.join(', ')} too. `));
}

/**
 * What stands against a figure, in full. On paper the step is named at which it
 * stands already.
 * @param {StepFigure} f
 * @param {number} number
 * @param {Map<string, number>} told
 */
function objection(f, number, told) {
  if (!f.word || f.word === 'within' || f.word === 'inside the guide') return [];
  const at = told.get(`figure/${f.sentence}`);
  if (at === undefined) told.set(`figure/${f.sentence}`, number);
  return [h('p', { class: at === undefined ? '' : 'again' }, f.sentence), at !== undefined && h('p', { class: 'paper-only' }, `As at step ${at}. `)];
}

/**
 * A figure of the boat's sheets, or what it takes to know it. On paper, a line
 * for what is not known stands where it is asked for first.
 * @param {StepFigure} f
 * @param {number} number
 * @param {Map<string, number>} told
 * @param {(title: string, ...inside: Node[]) => HTMLElement} fold
 */
function figure(f, number, told, fold) {
  const sheet = h('p', { class: 'help' }, h('a', { href: `#/sheet/${encodeURIComponent(f.calculation)}` }, f.sheet));
  if (f.table) {
    const long = f.table.rows.length > SHORT;
    return h(
      'section',
      { class: long ? 'result first long' : 'result first' },
      h('h3', {}, f.title),
      h('div', { class: 'list' }, ...(long ? [fold(`All ${f.table.rows.length}`, ...listed(f.table, fold))] : listed(f.table, fold))),
      long && h('p', { class: 'paper-only' }, `Print the sheet ${f.sheet} beside this.`),
      sheet,
    );
  }
  if (f.text === '') {
    const needs = f.needs ?? [];
    const again = told.has(`line/${f.of}`);
    told.set(`line/${f.of}`, number);
    return h(
      'section',
      { class: again ? 'result unknown again' : 'result unknown', 'data-figure': f.of },
      h('h3', {}, f.title),
      h('p', { class: 'value words' }, 'Not known'),
      needs.length > 0
        ? h('ul', {}, ...needs.map((n) => h('li', {}, `needs ${n.title.toLowerCase()}`, h('span', { class: 'how-to' }, `. ${n.how}${n.gauge ? ` Gauge: ${n.gauge}.` : ''}`))))
        : h('p', {}, f.why),
      sheet,
    );
  }
  return h(
    'section',
    { class: 'result', 'data-figure': f.of },
    h('h3', {}, f.title),
    h('p', { class: /\d/.test(f.text) && f.text.length < 24 ? 'value' : 'value words' }, f.maker?.text ?? f.text),
    f.maker && h('p', { class: 'maker' }, h('strong', {}, 'The maker’s figure. '), f.maker.source, f.maker.text === f.text ? '.' : `. Calculated: ${f.text}.`),
    f.interval && h('p', { class: 'interval' }, `95 % interval${f.maker ? ' of what is calculated' : ''}: ${f.interval}`),
    f.word && h('p', {}, badge(f.word, f.reads ?? '')),
    ...objection(f, number, told),
    (f.restsOn ?? []).length > 0 && h('p', { class: 'help' }, `Rests on what nobody confirmed: ${(f.restsOn ?? []).join(', ')}.`),
    sheet,
  );
}

/**
 * Something to write down: a reading of the boat has the boat's own field. On
 * paper, its last value and its limits stand where it is asked for first.
 * @param {WorkStep} step
 * @param {StepRecord} r
 * @param {Whole} all
 * @param {Map<string, number>} told
 * @param {Acts} acts
 */
function record(step, r, all, told, acts) {
  const again = r.reading && told.has(`read/${r.reading}`) ? 'last again' : 'last';
  if (r.reading) told.set(`read/${r.reading}`, step.number);
  const state = h('p', { class: 'from' }, r.noted ? `Written down${r.notedOn ? ` ${r.notedOn}` : ''}: ${r.noted}` : '');
  const wrong = h('p', { class: 'wrong' });
  /** @param {unknown} value */
  const keep = (value) => {
    const problems = acts.happened(step, { record: [value === undefined ? { title: r.title } : { title: r.title, value }] }, `${r.title}: kept`);
    wrong.textContent = problems.map(inWords).join(' ');
    if (problems.length === 0) state.textContent = value === undefined ? '' : 'Kept.';
  };
  const last = [
    r.reading && h('p', { class: r.last && r.last.length < LONG ? again : `${again} long-last` }, r.last ? `Last: ${r.last} (${r.date}).` : 'Never read so far.'),
    r.limits.length > 0 && h('p', { class: again }, ...r.limits.map((l) => `${l.title}: ${l.bound}${l.guide ? ' (a guide)' : ''}. `)),
  ];
  const root = all.schema?.schema;
  const described = root && r.reading ? resolved(root, /** @type {Schema} */ (at(root, '/properties/readings/items'))).properties?.[r.reading] : undefined;
  return h(
    'div',
    { class: 'record', 'data-record': r.title },
    h('h4', {}, r.title, h('span', { class: 'write-in' })),
    ...last,
    root && described ? reading(step, r, root, described, all, keep) : plain(step, r, keep),
    wrong,
    state,
  );
}

/**
 * A field for what is no reading of the boat.
 * @param {WorkStep} step
 * @param {StepRecord} r
 * @param {(value: unknown) => void} keep
 */
function plain(step, r, keep) {
  const field = h('input', { type: 'text', autocomplete: 'off', 'aria-label': r.title, id: `record-${step.id}-${r.title}` });
  field.value = r.noted ?? '';
  field.addEventListener('change', () => keep(field.value.trim() === '' ? undefined : field.value.trim()));
  return h('div', { class: 'entry' }, field);
}

/**
 * The boat file's own form for one reading. It is kept once typing rests.
 * @param {WorkStep} step
 * @param {StepRecord} r
 * @param {Schema} root
 * @param {Schema} described
 * @param {Whole} all
 * @param {(value: unknown) => void} keep
 */
function reading(step, r, root, described, all, keep) {
  const name = r.reading ?? '';
  let wait = 0;
  const scalar = r.noted !== undefined && !resolved(root, described).items;
  const form = new Form({
    root,
    schema: { type: 'object', properties: { [name]: described } },
    value: scalar ? { [name]: r.noted } : {},
    prefix: `record-${step.id}`,
    units: units(),
    choices: all.schema?.choices ?? {},
    read: all.read,
    changed(value) {
      clearTimeout(wait);
      wait = setTimeout(() => keep(value[name]), PAUSE);
    },
  });
  return form.element;
}

/**
 * @param {WorkStep} step
 * @param {Acts} acts
 */
function note(step, acts) {
  const field = h('input', { type: 'text', id: `note-${step.id}`, autocomplete: 'off' });
  field.value = step.tickNote ?? '';
  field.addEventListener('change', () => acts.happened(step, { note: field.value }, `Note to step ${step.number}: kept`));
  return h('div', { class: 'field note' }, h('label', { for: `note-${step.id}` }, 'Note'), h('div', { class: 'entry' }, field));
}

/** @param {number} n */
export function hours(n) {
  return n < 1 ? `${Math.round(60 * n)} min` : `${Number(n.toPrecision(3))} h`;
}
