// Fault finding: one question a screen, three answers at the thumb, what was
// found apart from what is suspected, and every answer given open to change.

import { originsGiven } from '../form/origins.js';
import { Form } from '../form/form.js';
import { inWords } from '../form/field.js';
import { button, h } from '../kit/dom.js';
import { trimmed } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { hazards } from '../sheet/answer.js';
import { cardOf, printWithWorking } from '../sheet/card.js';
import { cells, codeOf } from '../sheet/cells.js';
import { exportButtons } from '../sheet/exports.js';
import { folds } from '../sheet/folds.js';
import { behind } from '../sheet/sheet.js';
import { units } from '../store/settings.js';
import { inHand, keepTyped, nameOf, toSend, typed } from '../store/shelf.js';
import { changed, lastChange, takeBack } from '../store/undo.js';
import { FAULT, blankOf, faultInput, runOf } from './asks.js';
import { proposed } from './proposed.js';
import { suspectLine } from './suspects.js';
import { onwardLinks, workLinks } from './work.js';

/** @typedef {import('../../wasm/marinecalc.js').Question} Question */
/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {{ evidence: string, answer: string, by?: string }} Given */

const ANSWERS = /** @type {const} */ ([['yes', 'Yes'], ['no', 'No'], ['unknown', 'Don’t know']]);

/** The question at which fault finding opens next, or the sign by which it was opened. */
export const questionWanted = { id: '', sign: '' };

/** @type {import('../app.js').View} */
export function showFault(app, main) {
  const { id: boatId, boat } = inHand();
  const withBoat = app.calculator.call(blankOf(FAULT, toSend(boat)));
  const blank = withBoat.ok ? withBoat : app.calculator.call(blankOf(FAULT));
  if (!blank.ok) {
    main.append(h('h1', {}, 'Fault finding'), ...blank.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
    return 'Fault finding';
  }
  const { schema, choices = {}, given: fromBoat = {}, questions = [] } = blank;
  const byId = new Map(questions.map((q) => [q.id, q]));
  const place = `${boatId}/${FAULT}`;
  const input = { ...schema.$defs.input, properties: without(schema.$defs.input.properties ?? {}, 'answers') };

  let value = typed(boatId, FAULT);
  /** The question that was asked for, in the place of the one proposed. @type {string | undefined} */
  let wanted = questionWanted.id || undefined;
  /** The sign that this was opened by, while answers from before count beside it. */
  let sign = questionWanted.sign;
  Object.assign(questionWanted, { id: '', sign: '' });
  const given = () => /** @type {Given[]} */ (value.answers ?? fromBoat.answers?.value ?? []);

  /** @param {import('../../wasm/marinecalc.js').Json} to */
  const put = (to) => {
    value = to;
    keepTyped(boatId, FAULT, toKeep());
    draw();
  };
  /** None answered is an answer too, where the boat's file has some. */
  const toKeep = () => ({ ...trimmed(value), ...(value.answers ? { answers: value.answers } : {}) });
  /** Begins anew, with the sign by which this was opened or with nothing. */
  const anew = () => {
    const was = value;
    changed(place, 'a new fault', () => put(was));
    put({ ...value, answers: given().filter((g) => g.evidence === sign) });
  };
  /**
   * @param {Question} q
   * @param {string | undefined} answer undefined takes it away
   * @param {string} [by]
   */
  const say = (q, answer, by) => {
    const was = value;
    const next = answer === undefined ? [] : [by ? { evidence: q.id, answer, by } : { evidence: q.id, answer }];
    changed(place, q.title, () => {
      wanted = q.id;
      put(was);
    });
    wanted = undefined;
    sign = '';
    put({ ...value, answers: [...given().filter((g) => g.evidence !== q.id), ...next] });
    asking.scrollIntoView();
    asking.focus({ preventScroll: true }); // the button that was touched is gone
  };

  const form = new Form({
    root: schema, schema: input, value, prefix: 'in', units: units(), choices, read: app.read,
    changed: (to) => {
      value = { ...to, ...(value.answers ? { answers: value.answers } : {}) };
      keepTyped(boatId, FAULT, toKeep());
      draw();
    },
  });
  form.showOrigins(originsGiven(fromBoat));
  const asking = h('section', { class: 'asking', 'aria-label': 'Question', tabindex: '-1' });
  const line = suspectLine(app);
  const stands = h('div', { class: 'sheet stands' });

  /** @returns {import('../../wasm/marinecalc.js').RunRequest} */
  const request = () => runOf(FAULT, faultInput(value, fromBoat), toSend(boat));

  function draw() {
    const reply = app.calculator.call(request());
    if (!reply.ok) {
      cardOf(null);
      asking.replaceChildren(...reply.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
      stands.replaceChildren();
      return;
    }
    const { sheet } = reply;
    const all = proposed(sheet).flatMap((q) => byId.get(q) ?? []).filter((q) => given().every((g) => g.evidence !== q.id)); // those stand under answers given
    const asked = wanted ? byId.get(wanted) : undefined;
    const yes = given().some((g) => g.answer === 'yes');
    const next = asked ?? (yes ? all[0] : undefined);
    const before = sign ? given().filter((g) => g.evidence !== sign).length : 0;
    const found = foundOn(sheet);
    const links = workLinks(app, sheet);
    if (links.length > 0) links.push(h('div', { class: 'tools actions' }, ...onwardLinks(app, schema.onward)));
    line.show(sheet, yes, given().length > 0 ? `${given().length} answered` : found.length > 0 ? 'By what was read' : 'Nothing answered yet');
    asking.replaceChildren(
      line.element,
      h(
        'div',
        { class: 'under' },
        before > 0 ? h('p', {}, `${before} answers from before count too.`) : line.words,
        lastChange(place) !== undefined && button('Back', () => takeBack(place), { class: 'quiet' }),
        given().length > 0 && (!sign || before > 0) && button('Another fault: start anew', anew, { class: 'quiet' }),
      ),
      found.length > 0 ? h('p', { class: 'resume' }, `Found: ${found.map((r) => r.cells[at(sheet, 'name')]?.text).join(', ')}. `, button('Do it step by step', () => stands.scrollIntoView(), { class: 'link' })) : '',
      ...(next ? question(next, sheet, given().find((g) => g.evidence === next.id), say) : start(questions, yes, (q) => say(q, 'yes'))),
    );
    stands.replaceChildren(
      ...standing(sheet, found, byId, yes, say, (q) => q === next || given().some((g) => g.evidence === q.id)),
      ...(found.length > 0 ? links : []),
      ...others(all.filter((q) => q !== next), (q) => {
        wanted = q.id;
        draw();
        asking.scrollIntoView();
        asking.focus({ preventScroll: true });
      }),
      ...answered(given(), byId, say),
      ...hazards(sheet.cautions ?? [], FAULT),
      folds(FAULT)(
        'All of it: work, questions, tables, working',
        ...(found.length > 0 ? [] : links),
        folds(FAULT)('All questions', everyQuestion(questions, given(), say)),
        folds(FAULT)('Where she lies, and time', form.element),
        ...behind(sheet),
        h('div', { class: 'tools' }, button('Print with working', printWithWorking), ...exportButtons(app.calculator, request, sheet)),
      ),
    );
    cardOf(() => ({ sheet, boat: nameOf(boat), asked: ['lies'] }));
    speak([text(sheet, 'leadingCause'), next && `Next: ${next.title}`].filter(Boolean).join('. '));
  }

  main.append(h('h1', {}, schema.title ?? FAULT), asking, stands);
  draw();
  return schema.title ?? FAULT;
}

/**
 * @param {Question} q
 * @param {Sheet} sheet
 * @param {Given | undefined} given
 * @param {(q: Question, answer: string, by?: string) => void} say
 */
function question(q, sheet, given, say) {
  const row = rowOf(sheet, q);
  const settles = text(sheet, 'confirmEvidence') === q.id;
  const way = h('select', { 'aria-label': 'Looked at how' }, h('option', { value: '' }, 'Looked at how? Not said'), ...q.ways.map((w) => h('option', { value: w.id, selected: w.id === given?.by }, w.title)));
  return [
    settles && h('p', { class: 'settles' }, 'This look settles the first suspicion.'),
    h('h2', {}, q.title),
    ...(q.hazards ?? []).slice(0, 1).map(hazard), // before what is done; the answers below never stand over it
    h(
      'div',
      { class: 'answering' },
      q.kind === 'check' && h('p', { class: 'time' }, [`${q.minutes} min`, place(q.place), row('needs')].filter(Boolean).join(' · ')),
      h('p', {}, q.help),
      (q.hazards ?? []).length > 1 && folds(q.id)(`${q.hazards.length - 1} more to beware of`, ...q.hazards.slice(1).map(hazard)),
      row('ifYes') && h('p', { class: 'help' }, `Yes: ${row('ifYes')}`),
      row('ifNo') && h('p', { class: 'help' }, `No: ${row('ifNo')}`),
      q.ways.length > 1 && way,
      h('div', { class: 'thumb' }, ...ANSWERS.map(([answer, words]) => button(words, () => say(q, answer, way.value || undefined), { 'aria-pressed': String(given?.answer === answer) }))),
    ),
  ].filter((part) => part instanceof HTMLElement);
}

/**
 * What to begin with: what was noticed, by where.
 * @param {Question[]} questions
 * @param {boolean} done whether something was told already
 * @param {(q: Question) => void} yes
 */
function start(questions, done, yes) {
  const groups = new Map(questions.filter((q) => q.kind === 'symptom').map((q) => [q.groupTitle, /** @type {Question[]} */ ([])]));
  for (const q of questions) if (q.kind === 'symptom') groups.get(q.groupTitle)?.push(q);
  return [
    h('h2', {}, done ? 'Nothing more to ask. Anything else?' : 'What do you notice?'),
    ...[...groups].map(([title, group]) =>
      folds('start')(title, h('div', { class: 'complaints' }, ...group.map((q) => button(q.title, () => yes(q), { class: 'quiet' })))),
    ),
  ];
}

/**
 * Where it stands: found apart from suspected.
 * @param {Sheet} sheet
 * @param {ReturnType<typeof foundOn>} found
 * @param {Map<string, Question>} byId
 * @param {boolean} yes whether anything was noticed
 * @param {(q: Question, answer: string) => void} say
 * @param {(q: Question) => boolean} asked whether it is asked already
 */
function standing(sheet, found, byId, yes, say, asked) {
  const name = at(sheet, 'name');
  const suspected = (rankingOf(sheet)?.rows ?? []).filter((r) => !found.includes(r)).slice(0, 5);
  const look = byId.get(text(sheet, 'confirmEvidence'));
  const settle = look && !asked(look) && look;
  return [
    h(
      'section',
      { class: 'answers' },
      h('section', { class: 'result first', 'data-result': 'leadingCause' }, h('h2', { class: 'answer-title' }, 'So far'), h('p', { class: 'value words' }, text(sheet, 'leadingCause')), h('p', {}, text(sheet, 'howSure'))),
    ),
    text(sheet, 'heldBack') && h('p', { class: 'verdict beyond' }, h('strong', {}, sheet.results.find((r) => r.name === 'heldBack')?.title, ': '), text(sheet, 'heldBack')),
    settle &&
      h(
        'section',
        { class: 'settling' },
        h('h3', {}, 'What would settle it'),
        h('p', {}, settle.title),
        h('p', { class: 'time' }, [`${settle.minutes} min`, place(settle.place), rowOf(sheet, settle)('needs')].filter(Boolean).join(' · ')),
        h('div', { class: 'choices' }, ...ANSWERS.map(([answer, words]) => button(words, () => say(settle, answer), { class: 'quiet', 'aria-label': `${words}: ${settle.title}` }))),
      ),
    found.length > 0 && h('section', {}, h('h3', {}, 'Found by a look'), h('ul', { class: 'found' }, ...found.map((r) => h('li', {}, r.cells[name]?.text)))),
    suspected.length > 0 &&
      yes &&
      h(
        'section',
        {},
        h('h3', {}, 'Suspected'),
        h('ul', { class: 'odds' }, ...suspected.map((r) => odds(r.cells[name]?.text ?? '', r.cells[at(sheet, 'probability')]))),
      ),
  ].filter((part) => part instanceof HTMLElement);
}

/** The causes that a look has found. @param {Sheet} sheet */
function foundOn(sheet) {
  const state = at(sheet, 'state');
  return (rankingOf(sheet)?.rows ?? []).filter((r) => codeOf(r.cells[state]) === 'found');
}

const rankingOf = (/** @type {Sheet} */ sheet) => sheet.tables?.find((t) => t.name === 'ranking');
/** Where a column of the ranking stands. @param {Sheet} sheet @param {string} name */
const at = (sheet, name) => rankingOf(sheet)?.columns.findIndex((c) => c.name === name) ?? -1;

/**
 * @param {string} name
 * @param {{ text: string, si?: number } | undefined} probability
 */
function odds(name, probability) {
  const bar = h('span', { class: 'bar-of', 'aria-hidden': 'true' });
  bar.style.width = `${Math.round(100 * (probability?.si ?? 0))}%`;
  return h('li', {}, h('span', {}, name), h('span', {}, probability?.text), bar);
}

/**
 * Other looks and questions, each asked at a touch.
 * @param {Question[]} all
 * @param {(q: Question) => void} ask
 */
function others(all, ask) {
  if (all.length === 0) return [];
  return [
    folds(FAULT)(
      `Ask or look at something else (${all.length})`,
      h('ul', { class: 'plain' }, ...all.map((q) => h('li', {}, button(q.kind === 'check' ? `${q.title} ${q.minutes} min` : q.title, () => ask(q), { class: 'link' })))),
    ),
  ];
}

/**
 * What was answered, each open to change.
 * @param {Given[]} given
 * @param {Map<string, Question>} byId
 * @param {(q: Question, answer: string | undefined, by?: string) => void} say
 */
function answered(given, byId, say) {
  if (given.length === 0) return [];
  return [folds(FAULT)(`Answers given (${given.length}), to change`, h('ul', { class: 'plain given' }, ...given.map((g) => change(byId.get(g.evidence), g, say))))];
}

/**
 * @param {Question | undefined} q
 * @param {Given | undefined} g
 * @param {(q: Question, answer: string | undefined, by?: string) => void} say
 */
function change(q, g, say) {
  if (!q) return h('li', {}, `${g?.evidence}: ${g?.answer}`);
  const pick = h(
    'select',
    { 'aria-label': q.title },
    h('option', { value: '' }, 'not asked'),
    ...ANSWERS.map(([answer, words]) => h('option', { value: answer, selected: answer === g?.answer }, words)),
  );
  pick.addEventListener('change', () => say(q, pick.value || undefined, g?.by));
  return h('li', {}, h('span', {}, q.title), pick);
}

/**
 * @param {Question[]} questions
 * @param {Given[]} given
 * @param {(q: Question, answer: string | undefined, by?: string) => void} say
 */
function everyQuestion(questions, given, say) {
  const groups = [...new Set(questions.map((q) => q.groupTitle))];
  return h(
    'div',
    {},
    ...groups.map((title) => h('section', {}, h('h3', {}, title), h('ul', { class: 'plain given' }, ...questions.filter((q) => q.groupTitle === title).map((q) => change(q, given.find((g) => g.evidence === q.id), say))))),
  );
}

/** @param {import('../../wasm/marinecalc.js').Caution} caution */
function hazard({ signal, text: said }) {
  return h('p', { class: `hazard said ${signal.toLowerCase()}` }, h('strong', {}, signal), ' ', said);
}

/**
 * A reader of the row in which the sheet proposes a question.
 * @param {Sheet} sheet
 * @param {Question} q
 * @returns {(column: string) => string}
 */
function rowOf(sheet, q) {
  for (const t of sheet.tables ?? []) {
    const row = ['nextChecks', 'quickQuestions'].includes(t.name) && t.rows.find((r) => cells(t)(r, 'evidence')?.text === q.id);
    if (row) return (column) => cells(t)(row, column)?.text ?? '';
  }
  return () => '';
}

/**
 * @param {Sheet} sheet
 * @param {string} result
 */
function text(sheet, result) {
  return sheet.results.find((r) => r.name === result)?.text ?? '';
}

/** @param {string} where */
function place(where) {
  return where === 'either' ? 'afloat or ashore' : where;
}

/**
 * @template T
 * @param {{ [name: string]: T }} all
 * @param {string} name
 */
function without(all, name) {
  const { [name]: _, ...rest } = all;
  return rest;
}
