// One calculation: what is known on one side, the sheet on the other, drawn
// anew with every key.

import { explanationsButton } from '../form/explanations.js';
import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { originsGiven, originsOf } from '../form/origins.js';
import { summary, warningList } from '../form/problems.js';
import { questionList } from '../form/questions.js';
import { today } from '../kit/dates.js';
import { button, drawAnew, h } from '../kit/dom.js';
import { trimmed } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { cautionList } from '../sheet/cautions.js';
import { exportButtons } from '../sheet/exports.js';
import { headline, sheetParts, verdictsInWords } from '../sheet/sheet.js';
import { units } from '../store/settings.js';
import { workLinks } from './work.js';
import { change, inHand, keepTyped, nameOf, toSend, typed } from '../store/shelf.js';

// On a device where a call takes longer than this, wait for a pause in typing.
const SLOW = 100; // ms
const PAUSE = 150; // ms

/** @type {import('../app.js').View} */
export function showCalculation(app, main, id = '') {
  const { id: boatId, boat } = inHand();
  const alone = { ask: /** @type {const} */ ('blank'), calculation: id, units: units() };
  const withBoat = app.calculator.call({ ...alone, boat: toSend(boat) });
  const blank = withBoat.ok ? withBoat : app.calculator.call(alone); // the run tells what is wrong with the boat
  if (!blank.ok) {
    main.append(h('h1', {}, 'No such calculation'), ...blank.problems.map((p) => h('p', {}, inWords(p))));
    return 'No such calculation';
  }
  const { schema, choices = {}, cautions = [], given: fromBoat = {}, questions } = blank;
  const input = questions ? without(schema.$defs.input, 'answers') : schema.$defs.input;
  const title = schema.title ?? id;

  let wait = 0;
  let pause = 0;
  let took = 0;
  const form = new Form({
    root: schema,
    schema: input,
    value: typed(boatId, id),
    prefix: 'in',
    units: units(),
    choices,
    read: app.read,
    known: (pointer) => fromBoat[pointer.slice(1)] !== undefined,
    changed(value) {
      keepTyped(boatId, id, trimmed(value) ?? {});
      clearTimeout(wait);
      wait = setTimeout(redraw, took > SLOW ? PAUSE : 0);
    },
  });
  const noted = fromBoat.answers?.value;
  const asked =
    questions &&
    questionList(questions, /** @type {any[]} */ (typed(boatId, id).answers ?? noted ?? []), (answers) => {
      form.value = { ...form.value, answers };
      keepTyped(boatId, id, trimmed(form.value) ?? {});
      redraw();
    });

  const sheetPart = h('div', { class: 'sheet' });
  const toWork = h('div', {});
  const takeAway = h('div', { class: 'tools' });
  const toKeep = h('div', {});
  const unused = warningList(withBoat, 'h3');
  const peek = button('', () => {
    result.focus({ preventScroll: true });
    (sheetPart.querySelector('.answers') ?? result).scrollIntoView();
  }, { class: 'peek', 'aria-hidden': 'true', tabindex: '-1' });
  const result = h(
    'section',
    { class: 'paper', 'aria-labelledby': 'sheet-title', tabindex: '-1' },
    h(
      'div',
      { class: 'paper-head' },
      h('h2', { id: 'sheet-title' }, `Sheet: ${title}`),
      h('p', { class: 'of-boat' }, nameOf(boat)),
      h('p', { class: 'printed-on' }, today()),
    ),
    sheetPart,
    toWork,
    takeAway,
  );

  const sight = new IntersectionObserver(([seen]) => (peek.hidden = seen?.isIntersecting ?? true));

  /** What was typed, as it would be kept with the boat. */
  const kept = () =>
    app.calculator.call({ ask: 'keep', boat: toSend(boat) ?? { name: nameOf(boat) }, calculation: id, input: trimmed(form.value) ?? {}, date: today() });

  /** Offers to keep with the boat what the sheet was calculated from. */
  function offerToKeep() {
    const offer = kept();
    const titles = offer.ok ? (offer.kept ?? []).map((k) => k.title) : ['What was typed'];
    if (titles.length === 0) {
      toKeep.replaceChildren();
      return;
    }
    const said = h('p', { class: 'help' }, `${titles.join(', ')}. Readings stand under today's date; other sheets then take them from the boat.`);
    const act = button(`Keep with ${nameOf(boat)}`, () => {
      const reply = kept();
      if (!reply.ok) {
        said.replaceChildren('The boat’s file does not take this, and nothing was kept.', summary(form.take(reply.problems), 'h3'));
        return;
      }
      const { name: _, ...nameless } = reply.boat;
      change(boatId, boat, boat.name === undefined ? nameless : reply.boat);
      const left = new Set(reply.left);
      keepTyped(boatId, id, Object.fromEntries(Object.entries(trimmed(form.value) ?? {}).filter(([name]) => left.has(name))));
      drawAnew(main, () => showCalculation(app, main, id));
      speak(`Kept with ${nameOf(boat)}`);
    });
    toKeep.replaceChildren(act, said);
  }

  /** @returns {import('../../wasm/marinecalc.js').RunRequest} */
  const request = () => {
    const given = trimmed(form.value) ?? {};
    // Nothing answered yet is an answer too: the first check to make.
    const input = questions && !noted ? { answers: [], ...given } : given;
    return { ask: 'run', calculation: id, input, boat: toSend(boat), units: units() };
  };
  const run = () => {
    const began = performance.now();
    const reply = app.calculator.call(request());
    took = performance.now() - began;
    return reply;
  };

  function redraw() {
    clearTimeout(pause);
    const reply = run();
    if (reply.ok) {
      form.take([]);
      form.showOrigins(originsOf(reply.sheet));
      sheetPart.replaceChildren(...sheetParts(reply.sheet));
      toWork.replaceChildren(...workLinks(app, id, reply.sheet));
      pause = setTimeout(offerToKeep, PAUSE);
      takeAway.replaceChildren(button('Print the sheet', () => print()), ...exportButtons(app.calculator, request, reply.sheet));
      peek.textContent = headline(reply.sheet);
      speak(verdictsInWords(reply.sheet) || headline(reply.sheet));
    } else {
      toKeep.replaceChildren();
      toWork.replaceChildren();
      const taken = form.take(reply.problems);
      form.showOrigins(originsGiven(fromBoat));
      // No old result stays beside an input that does not belong to it.
      const hazards = cautionList(cautions);
      sheetPart.replaceChildren(...(hazards ? [hazards] : []), summary(taken, 'h3'));
      peek.textContent = 'No sheet yet';
      speak(sheetPart.querySelector('.summary')?.textContent ?? '');
    }
    // What can hurt stays first.
    sheetPart.querySelector('.answers, .summary')?.before(unused);
    // The peek stands in for the answers while these are out of sight.
    sight.disconnect();
    sight.observe(sheetPart.querySelector('.answers') ?? sheetPart);
  }

  main.append(
    h('h1', {}, title),
    h('p', { class: 'lead' }, schema.description),
    h(
      'div',
      { class: 'job' },
      h(
        'section',
        { class: 'known', 'aria-labelledby': 'known-title' },
        h('h2', { id: 'known-title' }, 'Inputs'),
        h(
          'p',
          {},
          'A field left empty takes its value from ',
          h('a', { href: '#/boat' }, nameOf(boat)),
          ', from a table or from a usual value, and says so.',
        ),
        h('div', { class: 'tools' }, explanationsButton(form.element)),
        asked,
        form.element,
        toKeep,
        h(
          'div',
          { class: 'tools' },
          button('Clear what was typed', () => {
            const cleared = typed(boatId, id);
            keepTyped(boatId, id, {});
            drawAnew(main, () => showCalculation(app, main, id));
            const back = button('Bring back what was cleared', () => {
              keepTyped(boatId, id, cleared);
              drawAnew(main, () => showCalculation(app, main, id));
            });
            main.querySelector('.known .tools')?.before(h('p', { class: 'tools' }, back));
            back.focus();
          }),
        ),
      ),
      result,
    ),
    peek,
  );
  redraw();
  warmUp(run);
  return title;
}

/**
 * The schema of an object without one of its properties.
 * @param {import('../../wasm/marinecalc.js').Schema} schema
 * @param {string} name
 */
function without(schema, name) {
  const { [name]: _, ...properties } = schema.properties ?? {};
  return { ...schema, properties };
}

/**
 * Runs a few times while nobody types: a browser makes fast code only of what
 * has run before, and the first key should not wait for that.
 * @param {() => void} run
 */
function warmUp(run, times = 3) {
  setTimeout(() => {
    run();
    if (times > 1) warmUp(run, times - 1);
  }, 50);
}
