// One calculation: the few inputs that matter, the answer beside or below
// them, drawn anew with every key, then the other inputs and all that stands
// behind the answer.

import { explanationsButton } from '../form/explanations.js';
import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { tellNewer } from '../form/newer.js';
import { originsGiven, originsOf } from '../form/origins.js';
import { summary, warningList } from '../form/problems.js';
import { unitFor } from '../form/units.js';
import { aside, here } from '../kit/asking.js';
import { today } from '../kit/dates.js';
import { button, drawAnew, h, replaceUnlike, say } from '../kit/dom.js';
import { trimmed } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { answerParts, hazards, setApart } from '../sheet/answer.js';
import { cardOf, printWithWorking } from '../sheet/card.js';
import { calendarButton, exportButtons } from '../sheet/exports.js';
import { inputInstruments, resultInstruments } from '../sheet/instruments.js';
import { passesOf } from '../sheet/passes.js';
import { atFoot, behind, spoken } from '../sheet/sheet.js';
import { Standing } from '../sheet/standing.js';
import { whatIf } from '../sheet/whatif.js';
import { keepAnswer } from '../store/answers.js';
import { units } from '../store/settings.js';
import { onwardLinks, toStep, workLinks } from './work.js';
import { change, days, inHand, keepTyped, nameOf, toSend } from '../store/shelf.js';
import { changed, lastChange, takeBack } from '../store/undo.js';
import { FAULT, blankOf, isDated, keeping, runOf, typedFor } from './asks.js';
import { showFault } from './fault.js';
import { handedTo, openedFrom } from './handed.js';

const PAUSE = 150; // ms without a key, until what can wait is drawn and asked
const SLOW = 500; // ms from which on an answer that is waited for pales
const ONE_GO = 3000; // ms between keys of one change

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/** @type {import('../app.js').View} */
export function showCalculation(app, main, id = '') {
  if (id === FAULT) return showFault(app, main);
  const { id: boatId, boat } = inHand();
  const place = `${boatId}/${id}`;
  const handed = handedTo(app, id);
  const sent = handed.boat ?? toSend(boat);
  const withBoat = app.calculator.call(blankOf(id, sent));
  const blank = withBoat.ok ? withBoat : app.calculator.call(blankOf(id)); // the run tells what is wrong with the boat
  if (!blank.ok) {
    main.append(h('h1', {}, 'No such calculation'), ...blank.problems.map((p) => h('p', {}, inWords(p))));
    return 'No such calculation';
  }
  const { schema, choices = {}, places, cautions = [], given: fromBoat = {} } = blank;
  const input = schema.$defs.input;
  const title = schema.title ?? id;
  const results = Object.entries(schema.$defs.result.properties ?? {});
  const opens = Object.fromEntries(results.flatMap(([name, p]) => (p.opens ? [[name, p.opens]] : [])));
  const above = results.flatMap(([name, p]) => (['days', 'errands'].includes(p.instrument ?? '') ? [name] : []));
  let asked = false; // whether it is drawn anew before the next key
  let pause = 0;
  let lastKey = 0;
  const dated = isDated(schema);
  const begun = typedFor(schema, id);
  let before = trimmed(begun) ?? {};
  /** What is typed, but for the day that it is anyway. @param {Json} value */
  const lasting = (value) => (dated && value.today === today() ? Object.fromEntries(Object.entries(value).filter(([name]) => name !== 'today')) : value);
  /** @param {Json} value */
  const put = (value) => {
    keepTyped(boatId, id, lasting(value));
    before = value;
    drawAnew(main, () => showCalculation(app, main, id));
  };
  const form = new Form({
    root: schema,
    schema: input,
    value: begun,
    prefix: 'in',
    units: units(),
    choices,
    places,
    read: app.read,
    known: (pointer) => fromBoat[pointer.slice(1)],
    changed(value) {
      const was = before;
      before = trimmed(value) ?? {};
      const name = Object.keys({ ...was, ...before }).find((n) => JSON.stringify(was[n]) !== JSON.stringify(before[n]));
      const what = form.fields.get(`/${name}`)?.title ?? input.properties?.[name ?? '']?.title ?? 'what was typed';
      if (name !== undefined) typedNow(name);
      if (name !== undefined) changed(place, what, () => put(was), performance.now() - lastKey < ONE_GO);
      lastKey = performance.now();
      keepTyped(boatId, id, lasting(before));
      clearTimeout(pause);
      if (asked) return;
      asked = true;
      // The worker is at it before the key is painted; the page's own is after that.
      if (app.free()) queueMicrotask(redraw);
      else setTimeout(redraw);
    },
  });

  const typedOn = days(boatId);
  const typedNow = tellNewer(form, fromBoat, (name) => typedOn[`${id}/${name}`] ?? typedOn[id] ?? '', app.read, (name) => {
    const was = trimmed(form.value) ?? {};
    changed(place, form.fields.get(`/${name}`)?.title ?? 'what was typed', () => put(was));
    put(Object.fromEntries(Object.entries(was).filter(([n]) => n !== name)));
  });
  const answer = h('section', { class: 'answer sheet', 'aria-label': 'Answer', tabindex: '-1' });
  const detail = h('div', { class: 'sheet' });
  const toWork = h('div', {});
  const takeAway = h('div', { class: 'tools' });
  const toKeep = h('span', {});
  const back = h('span', {});
  const paper = h(
    'section',
    { class: 'paper', 'aria-label': 'Behind the answer' },
    h('div', { class: 'paper-head' }, h('h2', {}, title), h('p', { class: 'of-boat' }, nameOf(boat)), h('p', { class: 'printed-on' }, today())),
    detail,
    toWork,
    takeAway,
  );
  const unused = warningList(withBoat, 'h3');
  const toAnswer = button('', () => {
    answer.focus({ preventScroll: true });
    answer.scrollIntoView();
  }, { class: 'peek' });
  const sight = new IntersectionObserver(([seen]) => (toAnswer.hidden = seen?.isIntersecting ?? true));

  /** What was typed, as it would be kept with the boat. */
  const toKeepOf = () => lasting(form.read() ?? trimmed(form.value) ?? {});

  /** Shows the answer; what is wrong in the boat's file stands after its head. @param {...HTMLElement} parts */
  function show(...parts) {
    const head = parts.findIndex((part) => part.matches('.answers, .summary'));
    if (unused && head >= 0) parts.splice(head + 1, 0, unused);
    replaceUnlike(answer, parts, (part) => part === unused || part.matches('.cautions, .fold:has(> .cautions), .next, .to-work'));
  }

  let tied = true; // whether picks ask for other inputs

  /** What can wait until nobody types. @param {boolean} usable whether all that is typed can be used */
  async function rested(usable) {
    const now = before;
    const still = () => before === now && drawnOf === now && answer.isConnected;
    if (!still()) return; // and drawn it rests anew
    const offer = usable && (await app.ask(keeping(boat, id, toKeepOf())));
    const reply = tied && (await app.ask({ ...request(trimmed(form.value) ?? {}), ask: 'fits' }));
    if (!still()) return;
    if (reply && reply.ok) {
      form.narrow(reply.fits);
      tied = Object.keys(reply.fits).length > 0;
    }
    if (!offer) return;
    offerToKeep(offer);
    const known = main.querySelector('.known');
    const same = !handed.boat && inHand().boat === boat; // what the kept answer is found by
    if (same && shownSheet && known instanceof HTMLElement) keepAnswer(id, app.build, { day: dated && today(), title, lead: schema.description, sheet: shownSheet, tall: known.offsetHeight, width: innerWidth });
  }

  /**
   * Offers to keep with the boat what the sheet was calculated from.
   * @param {import('../../wasm/marinecalc.js').ReplyTo<import('../../wasm/marinecalc.js').KeepRequest>} offer
   */
  function offerToKeep(offer) {
    const titles = offer.ok ? (offer.kept ?? []).map((k) => k.title) : ['What was typed'];
    if (titles.length === 0) {
      toKeep.replaceChildren(...(keptNow === place ? [h('strong', { role: 'status' }, 'Kept.')] : []));
      keptNow = '';
      return;
    }
    const about = `${titles.join(', ')}: under today's date, for all sheets`;
    const whose = boat.name ? nameOf(boat) : 'your boat';
    toKeep.replaceChildren(button(`Keep with ${whose}`, keepIt, { title: about, 'aria-label': `Keep with ${whose}: ${about}` }));
  }

  function keepIt() {
    const reply = app.calculator.call(keeping(boat, id, toKeepOf()));
    if (!reply.ok) {
      toKeep.replaceChildren(h('span', {}, 'The boat’s file does not take this, and nothing was kept.'), summary(form.take(reply.problems), 'h3'));
      return;
    }
    const { name: _, ...nameless } = reply.boat;
    const after = boat.name === undefined ? nameless : reply.boat;
    const was = trimmed(form.value) ?? {};
    changed(place, `kept with ${nameOf(boat)}`, () => {
      change(boatId, after, boat);
      put(was);
    });
    change(boatId, boat, after);
    keptNow = place;
    const left = new Set(reply.left);
    put(Object.fromEntries(Object.entries(was).filter(([name]) => left.has(name))));
    speak(`Kept with ${nameOf(boat)}`);
  }

  /**
   * @param {Json} typedIn
   * @returns {import('../../wasm/marinecalc.js').RunRequest}
   */
  const request = (typedIn = standing.used) => runOf(id, typedIn, sent);
  const standing = new Standing(() => form.read());

  /** @type {import('../../wasm/marinecalc.js').Sheet | null} */
  let shownSheet = null;
  const tryOut = whatIf(
    input,
    () => shownSheet,
    async (name, value) => {
      const reply = await app.ask(request({ ...standing.used, [name]: value }));
      return reply.ok ? reply.sheet : null;
    },
    (name, text) => form.fields.get(`/${name}`)?.enter(text),
    app.read,
    (schema) => unitFor(schema, units()),
  );

  /** @type {Json | undefined} what is drawn was made from this */
  let drawnOf;
  let busy = false;
  let behindHand = false; // whether something was typed since

  /** Draws what is typed, and again until nothing was typed since. */
  async function redraw() {
    asked = false;
    if (busy) {
      behindHand = true;
      return;
    }
    busy = true;
    answer.ariaBusy = 'true';
    const slow = setTimeout(() => answer.classList.add('slow'), SLOW);
    try {
      do {
        behindHand = false;
        const now = before;
        const taken = await aside(standing.take(now), (used) => app.ask(request(used)));
        if (!answer.isConnected) return;
        draw(taken, now);
      } while (behindHand);
    } finally {
      busy = false;
      answer.ariaBusy = null;
      clearTimeout(slow);
      answer.classList.remove('slow');
    }
  }

  /**
   * @param {ReturnType<typeof standing.take> extends Generator<any, infer T> ? T : never} taken
   * @param {Json} of what was typed
   */
  function draw({ sheet, problems, old, without, held }, of) {
    clearTimeout(pause);
    const taken = form.take(problems);
    shownSheet = problems.length > 0 ? null : sheet;
    tryOut.element.hidden = shownSheet === null;
    tryOut.drawn();
    form.showOrigins(sheet ? originsOf(sheet) : originsGiven(fromBoat));
    const lacking = problems.length > 0 && summary(taken, 'h3', (pointer) => Object.values(input.properties ?? {}).find((p) => p.boat === pointer)?.title);
    paper.hidden = !sheet;
    answer.classList.toggle('stale', problems.length > 0 && sheet !== null);
    let follows = () => {};
    if (sheet) {
      setApart(sheet, input.asks ?? [], fromBoat);
      const titles = (/** @type {string[]} */ names) => names.map((name) => form.fields.get(`/${name}`)?.title ?? input.properties?.[name]?.title ?? name).join(', ');
      const left = [old && 'The answer from before', without.length > 0 && `Without: ${titles(without)}`, held.length > 0 && `As it was before: ${titles(held)}`].filter(Boolean);
      const told = taken.loose.length === 0; // at the fields
      const work = workLinks(app, sheet);
      show(
        ...some(!told && lacking, lacking && h('p', { class: told ? 'summary left-out' : 'left-out' }, left.join('. '))),
        ...some(...answerParts(sheet, boatId, resultInstruments(app, schema, sheet, form, boatId, given, (step) => toStep(sheet, step)), toKeep, ...next(), ...(problems.length > 0 ? [] : [button('Print a card', () => print())]), ...calendarButton(app.calculator, request, sheet))),
        ...(sheet.procedures ? [] : work), // what is past its limit has its cure beside it
      );
      // Behind the answer, and so once no key comes any more, but for the first time.
      follows = () => detail.replaceChildren(...behind(sheet, opens, above));
      if (!drawnOf) follows();
      toWork.replaceChildren(...(sheet.procedures ? work : []));
      takeAway.replaceChildren(button('Print with working', printWithWorking), ...exportButtons(app.calculator, request, sheet));
      cardOf(problems.length > 0 ? null : () => ({ sheet, boat: nameOf(boat), asked: input.asks ?? [], passes: here(passesOf(sheet), app.calculator.call) }));
      say(toAnswer, problems.length > 0 ? `The answer from before: ${atFoot(sheet)}` : atFoot(sheet));
    } else {
      for (const place of [detail, toWork, takeAway]) place.replaceChildren();
      const ways = next(); // what is typed may be enough for one of them
      show(...some(lacking, ...hazards(cautions, id), ways.length > 0 && h('div', { class: 'tools actions' }, ...ways)));
      say(toAnswer, 'No answer yet');
      cardOf(null);
    }
    const first = !drawnOf;
    drawnOf = of;
    pause = setTimeout(() => {
      if (!first) follows();
      void rested(problems.length === 0);
    }, PAUSE);
    if (problems.length > 0) toKeep.replaceChildren();
    speak(problems.length > 0 || !sheet ? answer.querySelector('.summary')?.textContent ?? '' : spoken(sheet));
    const undone = lastChange(place);
    back.replaceChildren(...some(undone !== undefined && button('Undo', () => takeBack(place), { class: 'quiet', 'aria-label': `Undo: ${undone}` })));
    // The line at the foot stands in for the answer while this is out of sight.
    sight.disconnect();
    sight.observe(answer.querySelector('.answers') ?? answer);
  }

  const given = (/** @type {string} */ name) => trimmed(form.value)?.[name] ?? fromBoat[name]?.value;
  const next = () => onwardLinks(app, schema.onward, (to) => openedFrom.set(`${boatId}/${to}`, id));
  const more = form.fields.size - (input.asks?.length ?? 0);
  main.append(
    h('h1', {}, title),
    h('p', { class: 'lead' }, schema.description),
    toAnswer, // early, so that the keyboard soon gets there
    handed.from.length > 0
      ? h('p', { class: 'handed' }, 'With what is typed on ', ...handed.from.flatMap((c, i) => [i > 0 ? ', ' : '', h('a', { href: `#/sheet/${c.id}` }, c.title)]), ', not kept with the boat yet.', handed.apart && ' The choice in the boat’s file is of other work and left out here.')
      : '',
    h(
      'div',
      { class: 'job' },
      h(
        'section',
        { class: 'known', 'aria-label': 'Inputs' },
        form.element,
        ...inputInstruments(app, schema, form),
        h(
          'div',
          { class: 'under' },
          more > 0 && button('More inputs', () => showRest(rest), { class: 'link' }),
          tryOut.element,
          back,
        ),
      ),
      answer,
    ),
  );
  const rest = h(
    'section',
    { class: 'rest-of', 'aria-labelledby': 'rest-title', tabindex: '-1' },
    h('h2', { id: 'rest-title' }, 'More inputs'),
    form.rest,
    h(
      'div',
      { class: 'tools' },
      explanationsButton(form.element, form.rest),
      button('Clear what was typed', () => {
        const was = trimmed(form.value) ?? {};
        changed(place, 'cleared', () => put(was));
        put({});
      }, { class: 'quiet' }),
    ),
  );
  const job = main.querySelector('.job');
  job?.append(rest, paper);
  // Beside each other, what stands below the shorter of the two begins at its foot.
  const sizes = new ResizeObserver(() => job?.classList.toggle('tall', (answer.previousElementSibling?.clientHeight ?? 0) > answer.offsetHeight));
  for (const part of [answer, answer.previousElementSibling]) if (part) sizes.observe(part);
  for (const field of form.fields.values()) {
    field.control.addEventListener('focus', () => {
      tryOut.touch(field.pointer.slice(1));
      standing.settle();
    });
  }
  draw(here(standing.take(before), (used) => app.calculator.call(request(used))), before);
  if (!app.free()) void app.aside(request()); // begins it, for the first key
  return title;
}

let keptNow = ''; // the sheet from which something was kept just now

/** @param {HTMLElement} rest */
function showRest(rest) {
  rest.scrollIntoView();
  rest.focus({ preventScroll: true });
}

/**
 * @param {...(HTMLElement | false | null | undefined)} all
 * @returns {HTMLElement[]}
 */
function some(...all) {
  return all.filter((one) => one instanceof HTMLElement);
}
