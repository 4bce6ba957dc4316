// Work to go by: what there is, by part, and one piece of it, or several done
// together, step by step. What is ticked off and read is kept with the boat at
// once.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { today, timeOfDay } from '../kit/dates.js';
import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { folds } from '../sheet/folds.js';
import { change, inHand, nameOf, onShelf, toSend } from '../store/shelf.js';
import { boatOf, procedureOf } from './asks.js';
import { planIt, stepWanted, workList } from './work.js';
import { hours, stepParts } from './step.js';

/** @typedef {import('../../wasm/marinecalc.js').Procedure} Procedure */
/** @typedef {import('../../wasm/marinecalc.js').WorkStep} WorkStep */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

const fold = folds('procedure');

/** Of the work in hand: which step stands open. @type {Map<string, string>} */
const openSteps = new Map();

/** @type {import('../app.js').View} */
export function showProcedure(app, main, name = '') {
  if (name === '') return workList(app, main);
  const remedies = name.split(',');
  const { id } = inHand();
  const sent = () => toSend(onShelf(id).boat) ?? { name: nameOf({}) };
  const reply = app.calculator.call(procedureOf(remedies, sent()));
  if (!reply.ok) {
    main.append(
      h('h1', {}, 'This work cannot be shown'),
      ...reply.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))),
      h('p', {}, h('a', { href: '#/procedure' }, 'All work'), ', ', h('a', { href: '#/boat' }, 'the boat'), '.'),
    );
    return 'Work';
  }
  let work = reply.procedure;
  const schema = app.calculator.call(boatOf(sent()));
  let stale = false; // figures may rest on what was read since
  const said = h('div', { class: 'just-done', role: 'status' });
  const list = h('div', {});
  const head = h('div', {});

  /**
   * Keeps a changed boat, with a way back.
   * @param {Json} kept
   * @param {string} words
   */
  function keep(kept, words) {
    const before = onShelf(id).boat;
    const { name: _, ...nameless } = kept;
    const after = before.name === undefined ? nameless : kept;
    change(id, before, after);
    said.replaceChildren(
      h('p', {}, words),
      button('Undo', () => {
        change(id, after, before);
        said.replaceChildren(h('p', {}, 'Taken back.'));
        again();
      }),
    );
    speak(words);
  }

  /** Works all out anew: figures may rest on what was read. */
  function again() {
    const anew = app.calculator.call(procedureOf(remedies, sent()));
    if (!anew.ok) return said.replaceChildren(...anew.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
    work = anew.procedure;
    stale = false;
    draw();
  }

  /**
   * Tells the calculator what happened at a step, and keeps the boat.
   * @param {WorkStep} step
   * @param {{ ticked?: boolean, note?: string, record?: { title: string, value?: any }[] }} what
   * @param {string} words
   * @returns {import('../../wasm/marinecalc.js').Problem[]} what is wrong with it
   */
  function happened(step, what, words) {
    const done = app.calculator.call({ ask: 'tick', boat: sent(), remedies, step: step.id, date: today(), time: timeOfDay(), ...what });
    if (!done.ok) return done.problems;
    keep(done.boat, words);
    stale = stale || what.record !== undefined;
    return [];
  }

  /**
   * Ticks a step off, or takes that back, and goes to the next one.
   * @param {WorkStep} step
   * @param {boolean} ticked
   */
  function tick(step, ticked) {
    const words = ticked ? `Ticked off: ${step.number}. ${step.title}` : `Not done after all: ${step.number}. ${step.title}`;
    const problems = happened(step, { ticked }, words);
    if (problems.length > 0) {
      said.replaceChildren(...problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
      return;
    }
    openSteps.set(name, '');
    if (!ticked) openSteps.set(name, step.id);
    const phase = work.phases.find((p) => p.steps.includes(step))?.phase;
    if (stale || phase === 'trial') again(); // dates of what is due follow the trial
    else {
      const at = { date: today(), time: timeOfDay() };
      if (ticked) Object.assign(work, { lastTick: at }, { ticked: work.ticked + 1 });
      else work.ticked -= 1;
      step.tick = ticked ? at : undefined;
      draw();
    }
    list.querySelector('details[open] > summary')?.scrollIntoView({ block: 'start' });
    const next = list.querySelector('details[open] > summary');
    if (next instanceof HTMLElement) next.focus({ preventScroll: true });
  }

  function draw() {
    const steps = work.phases.flatMap((p) => p.steps);
    const wanted = steps.find((s) => s.id === stepWanted.id);
    stepWanted.id = '';
    if (wanted) {
      openSteps.set(name, wanted.id);
      setTimeout(() => list.querySelector('details[open]')?.scrollIntoView());
    }
    const open = openSteps.get(name) || steps.find((s) => !s.tick)?.id;
    const all = { work, steps, schema: schema.ok ? schema : undefined, read: app.read, remedies, id };
    head.replaceChildren(progress(work));
    end.hidden = work.ticked === 0;
    const told = new Map(); // the step at which each caution stands, and each drawing
    list.replaceChildren(
      ...work.phases.map((phase) =>
        h(
          'section',
          { class: 'phase', 'data-phase': phase.phase },
          h('h2', {}, phase.title),
          h(
            'ol',
            { class: 'steps' },
            ...phase.steps.flatMap((step) => {
              const made = h(
                'details',
                { class: step.tick ? 'step done' : 'step', open: step.id === open, 'data-step': step.id },
                h(
                  'summary',
                  {},
                  h('span', { class: 'tick-box', 'aria-hidden': 'true' }),
                  h('span', { class: 'step-number' }, `${step.number}`),
                  h('span', { class: 'step-title' }, step.title),
                  step.tick && h('span', { class: 'step-state' }, `done ${[step.tick.date, step.tick.time].filter(Boolean).join(' ')}`),
                ),
                ...stepParts(step, all, told, { happened, tick, fold }),
              );
              made.addEventListener('toggle', () => {
                if (!made.open || matchMedia('print').matches) return;
                openSteps.set(name, step.id);
                if (stale) {
                  again();
                  const now = list.querySelector('details[open] > summary');
                  if (now instanceof HTMLElement) now.focus();
                  return;
                }
                for (const other of list.querySelectorAll('details.step')) {
                  if (other !== made && other instanceof HTMLDetailsElement) other.open = false;
                }
              });
              const item = h('li', {}, made);
              const lacks = step.number === 1 && prepare(work);
              return lacks ? [item, lacks] : [item];
            }),
          ),
        ),
      ),
    );
  }

  const end = button('End this work', () => {
    const ended = app.calculator.call({ ask: 'close-work', boat: sent(), remedies, date: today() });
    if (!ended.ok) said.replaceChildren(...ended.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
    else {
      keep(ended.boat, 'Ended: what was done stands among the events of the boat, and the ticks are cleared.');
      again();
    }
    said.scrollIntoView({ block: 'center' });
  });
  main.append(
    h('h1', {}, work.title),
    head,
    warningList(reply, 'h2'),
    ...about(work, remedies),
    said,
    h('div', { class: 'procedure' }, list),
    h(
      'div',
      { class: 'tools' },
      button('Plan its days', () => planIt(remedies)),
      button('Print it', () => print()),
      end,
      h('a', { href: '#/procedure' }, 'All work'),
    ),
    h('p', { class: 'help printed-foot' }, 'The makers’ figures, local codes and licensed practice go before this.'),
  );
  draw();
  return work.title;
}

/** @param {Procedure} work */
function progress(work) {
  if (work.steps === 0) return h('p', { class: 'lead' }, h('strong', {}, 'Nothing to do on this boat.'));
  const share = `${work.ticked} of ${work.steps}`;
  return h(
    'div',
    { class: 'progress' },
    h('p', { class: 'lead' }, h('strong', {}, `${share} steps ticked off`), `, about ${hours(work.hours)} of work for one person. ${work.boat}.`),
    h('progress', { max: work.steps, value: work.ticked, 'aria-label': 'Steps ticked off' }, share),
    work.lastTick &&
      work.lastTick.date !== today() &&
      work.ticked < work.steps &&
      h('p', { class: 'resume' }, `Last ticked off on ${work.lastTick.date}. Before going on, see for yourself that what was made safe then is safe now.`),
  );
}

/**
 * What to measure or look up, behind the first thing to do: by what settles it,
 * each with the form on which it is typed.
 * @param {Procedure} work
 */
function prepare(work) {
  if (work.prepare.length === 0) return null;
  return h(
    'li',
    { class: 'prepare' },
    h('strong', {}, 'Measure or look up before you begin, by '),
    ...work.prepare.flatMap((p, i) => [
      `${i > 0 ? '; by ' : ''}${p.by ? lowered(p.by) : 'marks, papers, a look'}: `,
      ...p.what.flatMap((what, n) => {
        const asks = work.missing.find((m) => m.title === what && (m.gauge ?? '') === p.by);
        return [n > 0 ? ', ' : '', h('a', { href: `#/sheet/${encodeURIComponent(asks?.calculation ?? '')}`, title: asks?.how }, lowered(what))];
      }),
    ]),
    '.',
  );
}

/** @param {string} title */
const lowered = (title) => title.charAt(0).toLowerCase() + title.slice(1);

/**
 * What to know before beginning.
 * @param {Procedure} work
 * @param {string[]} remedies
 */
function about(work, remedies) {
  return [
    h('p', { class: 'printed-on' }, `Printed ${today()}.`),
    ...work.leftOut.map((words) => h('p', {}, words)),
    ...work.remedies.map((r) => h('p', {}, r.text)),
    work.tools.length > 0 && fold(`Tools (${work.tools.length})`, h('p', {}, work.tools.join(', '), '.')),
    remedies.length > 1 &&
      h(
        'p',
        {},
        'Done together: steps that several pieces of work need are done once.',
        work.moves > 1 && ` In this order she is moved ${work.moves} times, ashore and afloat: one piece of work after the other may need fewer.`,
      ),
  ].filter((e) => e instanceof HTMLElement);
}
