// The boat in hand as one form, and the shelf of boats kept in this browser.

import { explanationsButton } from '../form/explanations.js';
import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { summary, warningList } from '../form/problems.js';
import { button, h } from '../kit/dom.js';
import { trimmed } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { forFile, saveBoat, saveFile } from '../store/files.js';
import { followBoat, units } from '../store/settings.js';
import { isPlain } from '../store/merge.js';
import { add, boats, change, inHand, nameOf, onShelf, remove, setAside, takeInHand, toSend } from '../store/shelf.js';
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
    app.redraw();
    main.querySelector('h1')?.focus();
  };
  const { id, boat } = inHand();
  let shown = boat;
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
      if (value.units !== shown.units) followBoat(value);
      const now = /** @type {Json} */ (trimmed(value) ?? {});
      change(id, shown, now);
      shown = now;
      check();
    },
  });

  function check() {
    const now = /** @type {Json} */ (trimmed(form.value) ?? {});
    title.textContent = now.name === undefined ? 'Boat' : `Boat: ${nameOf(now)}`;
    const empty = Object.keys(now).length === 0;
    const reply = app.calculator.call({ ask: 'boat', boat: empty ? undefined : now });
    const problems = reply.ok ? [] : reply.problems.map((p) => ({ ...p, where: p.where.replace(/^\/boat/, '') }));
    form.showOrigins({});
    const taken = form.take(problems);
    state.replaceChildren(
      summary(taken, 'h2'),
      warningList(reply, 'h2'),
    );
    const count = taken.wrong.length + taken.loose.length;
    speak(count > 0 ? `To put right: ${count}` : '');
  }

  main.append(
    title,
    shelfTools(app, id, form, again),
    damagedTools(),
    readingTools(app, id, again),
    state,
    h('div', { class: 'tools' }, explanationsButton(form.element)),
    h('div', { class: 'boat-form' }, form.element),
  );
  check();
  return 'Boat';
}

/**
 * Which boat is in hand, and how boats come and go.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat that is shown
 * @param {Form} form
 * @param {() => void} again draws the view for the boat now in hand
 */
function shelfTools(app, id, form, again) {
  const said = h('div', { role: 'alert' });
  const now = () => /** @type {Json} */ (trimmed(form.value) ?? {});

  const shelf = h(
    'select',
    { id: 'shelf' },
    ...boats().map((k) => h('option', { value: k.id, selected: k.id === id }, nameOf(k.boat))),
  );
  shelf.addEventListener('change', () => {
    takeInHand(shelf.value);
    again();
  });

  const file = h('input', { type: 'file', accept: '.json,application/json', hidden: true, 'aria-label': 'Boat file' });
  file.addEventListener('change', async () => {
    const chosen = file.files?.[0];
    file.value = '';
    if (!chosen) return;
    const open = (/** @type {Json} */ boat) => {
      add(boat);
      again();
    };
    const boat = read(await chosen.arrayBuffer());
    if (typeof boat === 'string') {
      said.replaceChildren(h('p', { class: 'wrong' }, `${chosen.name} was not opened. ${boat}`));
      return;
    }
    const checked = app.calculator.call({ ask: 'boat', boat: toSend(boat) });
    if (checked.ok) open(boat);
    else {
      said.replaceChildren(
        h('p', { class: 'wrong' }, `${chosen.name} was not opened yet, since it holds what cannot be read:`),
        ...checked.problems.slice(0, 5).map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`)),
        checked.problems.length > 5 ? h('p', {}, `and ${checked.problems.length - 5} more.`) : '',
        button('Open it all the same, to mend it here', () => open(boat)),
      );
    }
  });

  const sure = h('span', { class: 'sure' });
  const takeOff = button('Remove this boat', () => {
    const yes = button(`Yes, remove ${nameOf(now())}`, () => {
      remove(id);
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
      button('Save to a file', () => saveBoat(toSend(now()) ?? {})),
      takeOff,
      ...demonstrations,
    ),
    onSheetsOnly(app, id),
    sure,
    said,
  );
}

/**
 * Says which sheets hold typed figures that are not part of the boat, and so
 * not of its file.
 * @param {import('../app.js').App} app
 * @param {string} boat its id
 */
function onSheetsOnly(app, boat) {
  const { typed } = onShelf(boat);
  const held = app.contents.calculations.filter(({ id }) => Object.keys(typed[id] ?? {}).length > 0);
  if (held.length === 0) return '';
  const links = held.flatMap(({ id, title }, i) => [i > 0 ? ', ' : '', h('a', { href: `#/sheet/${id}` }, title)]);
  return h('p', { class: 'help' }, 'Typed on a sheet only, and not in the file: ', ...links, '. Each of these sheets can keep it with the boat.');
}

/** What was kept and cannot be read: nothing of it is thrown away. */
function damagedTools() {
  const all = setAside();
  if (all.length === 0) return '';
  return h(
    'section',
    { 'aria-labelledby': 'damaged-title' },
    h('h2', { id: 'damaged-title' }, 'Set aside'),
    h('p', {}, 'This browser holds entries that are no boats, or are damaged. They stay as they are; the other boats are not touched by them.'),
    h('div', { class: 'tools' }, ...all.map(({ name, text }) => button(`Save ${name} to a file`, () => saveFile(`${forFile(name)}.txt`, 'text/plain', text)))),
  );
}

/**
 * The boat of a file, or what is wrong with the file.
 * @param {ArrayBuffer} bytes
 * @returns {Json | string}
 */
function read(bytes) {
  let text = '';
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes); // takes a byte order mark off
  } catch {
    return 'It is not UTF-8 text, as a boat file is. Save it as UTF-8 where it was written.';
  }
  try {
    const value = JSON.parse(text);
    return isPlain(value) ? value : 'A boat file holds one JSON object, in braces.';
  } catch (error) {
    return `It is no JSON: ${error instanceof Error ? error.message : error}.`;
  }
}
