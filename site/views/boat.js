// The boat in hand as one form, and the shelf of boats kept in this browser.

import { explanationsButton } from '../form/explanations.js';
import { inWords } from '../form/field.js';
import { goneWhenTyped, warningList } from '../form/problems.js';
import { visit } from '../form/visit.js';
import { button, byId, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { forFile, saveBoat, saveFile } from '../store/files.js';
import { followBoat } from '../store/settings.js';
import { at } from '../kit/pointer.js';
import { isPlain } from '../store/merge.js';
import { add, addOnce, boats, change, inHand, nameOf, onShelf, remove, setAside, takeInHand, toSend } from '../store/shelf.js';
import { boatOf, lineOf } from './asks.js';
import { Cards } from './cards.js';
import { readingTools } from './exchange.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */

const MUCH_ASKED = 3; // calculations that ask for what a boat begins with

/** @type {import('../app.js').View} */
export function showBoat(app, main, wanted = '') {
  const asked = app.calculator.call(boatOf());
  const looked = app.calculator.call(lineOf());
  if (!asked.ok || !looked.ok) {
    main.append(h('h1', {}, 'Boat'), ...(asked.ok ? [] : asked.problems.map((p) => h('p', {}, inWords(p)))));
    return 'Boat';
  }
  const again = () => {
    followBoat(inHand().boat);
    app.redraw();
    main.querySelector('h1')?.focus();
  };
  const { id, boat } = inHand();
  const title = h('h1', {}, 'Boat');
  const state = h('div', {});
  const tell = (/** @type {Json} */ now) => {
    title.textContent = now.name === undefined ? 'Boat' : `Boat: ${nameOf(now)}`;
    byId('boat-now', HTMLElement).textContent = Object.keys(now).length > 0 ? nameOf(now) : 'No boat yet';
  };
  const cards = new Cards(app, asked, boat, (from, to) => {
    change(id, from, to);
    tell(to);
    if (to.units !== from.units) {
      followBoat(to);
      app.redraw();
    }
  });
  const parts = looked.line.parts.map((p) => ({ id: p.id, title: p.title, about: p.about, asks: p.asks, holds: p.holds.map((pointer) => pointer.slice(1)) }));
  const held = new Set(parts.flatMap((p) => p.holds));
  const cardless = Object.entries(asked.schema.properties ?? {}).filter(([name]) => !held.has(name));
  const begin = [{ pointer: '/name', title: '', known: false, for: [] }, ...parts.flatMap((p) => p.asks.filter((a) => a.for.length >= MUCH_ASKED && a.pointer.lastIndexOf('/') > 0)).sort((a, b) => b.for.length - a.for.length)];
  const begins = begin.slice(1).some((a) => at(boat, a.pointer) === undefined);
  const on = (/** @type {Schema['card']} */ card) => cardless.filter(([, { card: own }]) => own === card).map(([name]) => name);
  main.append(
    title,
    shelfTools(app, id, () => cards.boat, again),
    damagedTools(),
    state,
    h(
      'div',
      { class: 'boat-form cards-of' },
      begins && cards.card({ id: 'begin', title: 'Begin with these', about: 'Most calculations ask for them.', holds: [...new Set(begin.flatMap((a) => a.pointer.split('/')[1] ?? []))], asks: begin }, wanted === '', true),
      h('div', { class: 'tools' }, h('a', { href: '#/readings', class: 'as-button' }, 'Log today’s readings'), explanationsButton(main)),
      cards.card({ id: 'boat', title: 'The boat', about: '', holds: on('boat'), asks: [] }, wanted === '' && !begins),
      ...parts.map((p) => cards.card(p, p.id === wanted)),
      cards.card({ id: 'job', title: 'Work, events and maker’s figures', about: 'What was done, decided and noticed, and what makers say.', holds: on(undefined), asks: [] }, wanted === 'job'),
    ),
    readingTools(app, id, again),
  );
  tell(boat);
  if (wanted.includes('.')) setTimeout(() => toPlace(`/${wanted.replaceAll('.', '/')}`)); // after the heading had the focus
  // The whole file is looked through once the cards stand there.
  void app.aside(boatOf(toSend(onShelf(id).boat))).then((reply) => {
    if (!title.isConnected) return;
    const problems = reply.ok ? [] : reply.problems;
    state.replaceChildren(
      ...(problems.length > 0 ? [h('h2', {}, 'To correct'), h('ul', { class: 'wrong-list' }, ...problems.slice(0, 12).map((p) => h('li', {}, placeLink(p.where), ` ${inWords(p)}`)))] : []),
      warningList(reply, 'h2'),
    );
    speak(problems.length > 0 ? `To correct: ${problems.length}` : '');
  });
  void app.aside(lineOf(toSend(onShelf(id).boat))).then((reply) => {
    if (title.isConnected && reply.ok) cards.has(reply.line.parts.flatMap((p) => p.asks.filter((a) => a.known).map((a) => a.pointer)));
  });
  return 'Boat';
}

/**
 * The way to what is to be put right.
 * @param {string} where
 */
function placeLink(where) {
  const place = where.replace(/^\/boat/, '');
  return button(place, () => toPlace(place), { class: 'link' });
}

/** Goes to a place of the boat's file: its field, else its card, else the log. @param {string} place */
function toPlace(place) {
  const card = document.querySelector(`[data-holds~="${CSS.escape(place.split('/')[1] ?? '')}"]`);
  if (!(card instanceof HTMLDetailsElement)) {
    location.hash = '#/readings';
    return;
  }
  card.open = true;
  card.dispatchEvent(new Event('toggle')); // its fields are made then
  const field = document.getElementById(`boat${place.replaceAll('/', '-')}`);
  if (field) visit(field);
  else card.querySelector('summary')?.focus();
  (field ?? card).scrollIntoView();
}

/**
 * Which boat is in hand, and how boats come and go.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat that is shown
 * @param {() => Json} now the boat as it is typed
 * @param {() => void} again draws the view for the boat now in hand
 */
function shelfTools(app, id, now, again) {
  const said = h('div', { role: 'alert' });

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
      goneWhenTyped(said);
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
      addOnce(boat);
      again();
    }),
  );
  return h(
    'details',
    { class: 'shelf card' },
    h('summary', {}, h('span', { class: 'card-title' }, 'Saved boats'), h('span', { class: 'card-known' }, 'open, save, change')),
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
