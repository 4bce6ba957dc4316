// The boat in hand as one form, and the shelf of boats kept in this browser.

import { explanationsButton } from '../form/explanations.js';
import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { summary, warningList } from '../form/problems.js';
import { button, drawAnew, h } from '../kit/dom.js';
import { trimmed } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { forFile, saveFile } from '../store/files.js';
import { followBoat, units } from '../store/settings.js';
import { add, allTyped, boats, change, inHand, isJson, nameOf, remove, takeInHand, toSend } from '../store/shelf.js';
import { readingTools } from './readings.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/** @type {import('../app.js').View} */
export function showBoat(app, main) {
  const asked = app.calculator.call({ ask: 'boat' });
  if (!asked.ok) {
    main.append(h('h1', {}, 'Boat'), ...asked.problems.map((p) => h('p', {}, inWords(p))));
    return 'Boat';
  }
  const again = () => {
    followBoat(inHand().boat);
    drawAnew(main, () => showBoat(app, main));
  };
  const { boat } = inHand();
  const title = h('h1', {}, 'Boat');
  const state = h('div', {});

  const form = new Form({
    root: asked.schema,
    schema: asked.schema,
    value: boat,
    prefix: 'boat',
    units: units(),
    choices: asked.choices ?? {},
    read: app.read,
    folds: true,
    changed(value) {
      if (value.units !== inHand().boat.units) followBoat(value);
      check(change(trimmed(value) ?? {}));
    },
  });

  /** @param {boolean} kept */
  function check(kept) {
    const now = /** @type {Json} */ (trimmed(form.value) ?? {});
    title.textContent = now.name === undefined ? 'Boat' : `Boat: ${nameOf(now)}`;
    const empty = Object.keys(now).length === 0;
    const reply = app.calculator.call({ ask: 'boat', boat: empty ? undefined : now });
    const problems = reply.ok ? [] : reply.problems.map((p) => ({ ...p, where: p.where.replace(/^\/boat/, '') }));
    form.showOrigins({});
    const taken = form.take(problems);
    state.replaceChildren(
      h('p', {}, kept ? 'What is typed here is kept in this browser.' : 'This browser keeps nothing: save the boat to a file.'),
      summary(taken, 'h2'),
      warningList(reply, 'h2'),
    );
    const count = taken.wrong.length + taken.loose.length;
    speak(count > 0 ? `To put right: ${count}` : '');
  }

  main.append(
    title,
    shelfTools(app, form, again),
    readingTools(app, () => /** @type {Json} */ (trimmed(form.value) ?? {}), again),
    state,
    h('div', { class: 'tools' }, explanationsButton(form.element)),
    h('div', { class: 'boat-form' }, form.element),
  );
  check(true);
  return 'Boat';
}

/**
 * Which boat is in hand, and how boats come and go.
 * @param {import('../app.js').App} app
 * @param {Form} form
 * @param {() => void} again draws the view for the boat now in hand
 */
function shelfTools(app, form, again) {
  const said = h('p', { class: 'wrong', role: 'alert' });
  const now = () => /** @type {Json} */ (trimmed(form.value) ?? {});

  const shelf = h(
    'select',
    { id: 'shelf' },
    ...boats().map(({ id, boat }) => h('option', { value: id, selected: id === inHand().id }, nameOf(boat))),
  );
  shelf.addEventListener('change', () => {
    takeInHand(shelf.value);
    again();
  });

  const file = h('input', { type: 'file', accept: '.json,application/json', hidden: true, 'aria-label': 'Boat file' });
  file.addEventListener('change', async () => {
    const text = await file.files?.[0]?.text();
    file.value = '';
    const boat = text === undefined ? null : read(text);
    if (boat === null) said.textContent = 'That file is no boat file: it must hold one JSON object.';
    else {
      add(boat);
      again();
    }
  });

  const sure = h('span', { class: 'sure' });
  const takeOff = button('Remove this boat', () => {
    const yes = button(`Yes, remove ${nameOf(now())}`, () => {
      remove();
      again();
    });
    sure.replaceChildren(
      h('span', {}, 'What is kept of it here is lost unless it was saved to a file. '),
      yes,
      button('No', () => {
        sure.replaceChildren();
        takeOff.focus();
      }),
    );
    yes.focus();
  });

  const demonstrations = app.demonstrationBoats.map((boat) =>
    button(`Demonstration: ${nameOf(boat)}`, () => {
      add(boat);
      again();
    }),
  );
  return h(
    'section',
    { class: 'shelf', 'aria-labelledby': 'shelf-title' },
    h('h2', { id: 'shelf-title' }, 'Boats kept here'),
    h('div', { class: 'field' }, h('label', { for: 'shelf' }, 'Current boat'), h('div', { class: 'entry' }, shelf)),
    h(
      'div',
      { class: 'tools' },
      button('New boat', () => {
        add({});
        again();
      }),
      button('Open a file', () => file.click()),
      file,
      button('Save to a file', () => save(toSend(now()) ?? {})),
      takeOff,
      ...demonstrations,
    ),
    onSheetsOnly(app),
    sure,
    said,
  );
}

/**
 * Says which sheets hold typed figures that are not part of the boat, and so
 * not of its file.
 * @param {import('../app.js').App} app
 */
function onSheetsOnly(app) {
  const typed = allTyped();
  const held = app.contents.calculations.filter(({ id }) => Object.keys(typed[id] ?? {}).length > 0);
  if (held.length === 0) return '';
  const links = held.flatMap(({ id, title }, i) => [i > 0 ? ', ' : '', h('a', { href: `#/sheet/${id}` }, title)]);
  return h('p', { class: 'help' }, 'Typed on a sheet only, and not in the file: ', ...links, '. Each of these sheets can keep it with the boat.');
}

/**
 * @param {string} text
 * @returns {Json | null}
 */
function read(text) {
  try {
    const value = JSON.parse(text);
    return isJson(value) ? value : null;
  } catch {
    return null;
  }
}

/**
 * Hands the boat to the person as a file.
 * @param {Json} boat
 */
function save(boat) {
  saveFile(`${forFile(nameOf(boat))}.boat.json`, 'application/json', `${JSON.stringify(boat, null, 2)}\n`);
}
