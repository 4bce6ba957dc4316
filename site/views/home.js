// Home: the line itself, from engine to propeller, with how each part stands
// and how old its newest reading is; above it one field that finds; below it
// what is due and what was used last.

import { inWords } from '../form/field.js';
import { today } from '../kit/dates.js';
import { button, h, s } from '../kit/dom.js';
import { picture } from '../sheet/picture.js';
import { sign, kindOf } from '../sheet/verdicts.js';
import { keepAnswer } from '../store/answers.js';
import { keepMarks, keptMarks, marksKey } from '../store/marks.js';
import { units } from '../store/settings.js';
import { addOnce, inHand, nameOf, toSend } from '../store/shelf.js';
import { MOST, usedLast } from '../store/used.js';
import { isLong, lineOf, withoutLog, workOf } from './asks.js';
import { findField } from './find.js';
import { keptLeads, leadsOf } from './leads.js';
import { begunOn } from './work.js';

/** @typedef {import('../../wasm/marinecalc.js').LineView} LineView */
/** @typedef {import('../../wasm/marinecalc.js').LinePart} LinePart */
/** @typedef {import('../../wasm/marinecalc.js').PartState} PartState */

const AT_REST = 2000; // ms on home until the survey is made ready, where how the parts stand was kept

/** @type {import('../app.js').View} */
export function showHome(app, main) {
  const boat = toSend(inHand().boat);
  const name = boat ? nameOf(boat) : 'Your boat';
  main.append(h('h1', { class: 'home-title' }, name));
  const field = findField(app);
  const home = h('div', { class: 'home' }, field);
  main.append(home, legend(app));
  const long = boat && isLong(boat);
  const asked = app.calculator.call(lineOf(long ? withoutLog(boat) : boat));
  if (!long) {
    showLine(app, home, field, boat, asked, boat ? begunOn(app) : []);
    // A survey is often what is opened next.
    if (boat && asked.ok) setTimeout(() => home.isConnected && void app.aside({ ask: 'parts', boat, units: units() }), AT_REST);
  } else {
    showLine(app, home, field, boat, asked);
    // The line stands there; what thousands of readings say of it comes when it is found.
    void Promise.all([app.aside(lineOf(boat)), app.aside(workOf(boat))]).then(([reply, work]) => {
      if (home.isConnected) showLine(app, home, field, boat, reply, begunOn(app, work));
    });
  }
  return name;
}

/**
 * @param {import('../app.js').App} app
 * @param {HTMLElement} home
 * @param {HTMLElement} field that finds, which stays
 * @param {import('../../wasm/marinecalc.js').Json | undefined} boat
 * @param {import('../../wasm/marinecalc.js').LineReply | import('../../wasm/marinecalc.js').Refusal} asked
 * @param {import('../../wasm/marinecalc.js').ListedWork[]} [begun] absent where what the readings say is still to come
 */
function showLine(app, home, field, boat, asked, begun) {
  const reply = asked.ok ? asked : app.calculator.call(lineOf());
  if (!reply.ok) throw new Error(reply.problems.map(inWords).join(' '));
  const { line } = reply;
  let still = keepStill(undefined);
  const figure = lineFigure(line, begun !== undefined);
  const known = boat && begun && keptLeads(boat, app.build);
  let due = dueList(line, begun ?? [], known);
  while (home.lastChild !== field) home.lastChild?.remove();
  home.append(
    ...present([
      !asked.ok && h('p', { class: 'wrong' }, h('a', { href: '#/boat' }, 'Something in the boat’s file is to be put right.')),
      still,
      figure.element,
      !boat ? beginning(app) : begun ? due : h('section', { class: 'due' }, h('h2', {}, 'Due'), h('p', {}, 'The readings are being gone through…')),
      usedList(app),
      h(
        'nav',
        { class: 'ways', 'aria-label': 'From here' },
        h('a', { href: '#/sheet/fault-finding' }, 'Find a fault'),
        boat ? h('a', { href: '#/survey' }, 'Survey') : h('a', { href: '#/procedure' }, 'Work'),
        h('a', { href: '#/calculations' }, 'Calcu\u00adlations'),
      ),
    ]),
  );
  if (!begun) return;
  if (boat && asked.ok) {
    mark(app, boat, field, (parts) => {
      for (const part of parts.parts) figure.mark(part);
      const now = keepStill(parts);
      still.replaceWith(now);
      still = now;
      if (!known) void leadsOf(app, boat, () => due.isConnected).then((leads) => leads?.length && due.replaceWith((due = dueList(line, begun, leads))));
    });
    keepAnswer('home', app.build, { line, begun }, today());
  } else for (const { id, title } of line.parts) figure.mark({ part: id, title, word: 'not measured', reads: 'nothing known yet', short: 'no data', verdicts: 0 });
}

/**
 * What keeps the shaft still, before all else.
 * @param {import('../../wasm/marinecalc.js').PartsState | undefined} parts
 */
export function keepStill(parts) {
  return h('div', { class: 'still' }, parts?.still && h('p', { class: 'hazard said danger' }, h('strong', {}, 'Keep the shaft still'), `: ${parts.still} `, h('a', { href: '#/sheet/fault-finding' }, 'Why')));
}

/**
 * @param {(HTMLElement | false)[]} parts
 * @returns {HTMLElement[]}
 */
function present(parts) {
  return parts.filter((p) => p instanceof HTMLElement);
}

/**
 * Finds how the parts stand, at once where nothing of the boat has changed.
 * @param {import('../app.js').App} app
 * @param {object} boat
 * @param {HTMLElement} place that must still be shown
 * @param {(parts: import('../../wasm/marinecalc.js').PartsState) => void} show
 */
export function mark(app, boat, place, show) {
  const key = marksKey(boat, units(), app.build);
  const kept = keptMarks(key);
  if (kept) return show(kept);
  void app.aside({ ask: 'parts', boat, units: units() }).then((reply) => {
    if (!reply.ok) return;
    keepMarks(key, reply.parts);
    if (place.isConnected) show(reply.parts);
  });
}

/**
 * The drawing between two rows of its parts, each a link. The leaders of the
 * drawing end at the rows.
 * @param {LineView} line
 * @param {boolean} whole with the age of what was read
 */
export function lineFigure({ drawing, parts, caption }, whole) {
  const svg = picture(drawing.svg);
  /** @type {Map<string, { state: HTMLElement, link: HTMLElement, part: LinePart }>} */
  const tiles = new Map();
  const links = parts.map((part, i) => {
    const state = h('span', { class: 'tile-state' }, h('span', { 'aria-hidden': 'true' }, '…'), h('span', { class: 'unseen' }, 'being worked out'));
    const link = h(
      'a',
      { href: `#/part/${part.id}`, class: `tile ${i % 2 === 0 ? 'above' : 'below'} column-${i >> 1}`, 'data-part': part.id },
      h('span', { class: 'tile-name' }, part.title),
      state,
      whole && h('span', { class: 'tile-age' }, moon(part.fresh), h('span', { class: 'unseen' }, part.read ? `last read ${part.ago}` : 'never read'), h('span', { 'aria-hidden': 'true' }, part.brief)),
    );
    tiles.set(part.id, { state, link, part });
    return link;
  });
  for (const part of parts) {
    const shape = shapeOf(svg, part.id);
    if (whole) shape?.classList.add(`age-${part.fresh}`);
    shape?.addEventListener('click', () => (location.hash = `#/part/${part.id}`));
  }
  const element = h(
    'section',
    { class: 'line', 'aria-label': 'The line, engine to propeller' },
    h('div', { class: 'drawing line-drawing' }, svg),
    ...links,
    caption !== '' && h('p', { class: 'line-caption' }, caption),
  );
  return {
    element,
    /** @param {PartState} state */
    mark(state) {
      const tile = tiles.get(state.part);
      if (!tile) return;
      tile.state.replaceChildren(sign(state.word), ' ', h('span', { 'aria-hidden': 'true' }, state.short), h('span', { class: 'unseen' }, state.reads));
      const kind = kindOf(state.word);
      tile.link.classList.add(kind);
      shapeOf(svg, state.part)?.classList.add(kind);
    },
  };
}

/**
 * The group of a part in the drawing, whose ids have the drawing's own name
 * before them.
 * @param {SVGSVGElement | null} svg
 * @param {string} part
 */
function shapeOf(svg, part) {
  return svg?.querySelector(`[id$="part-${part}"]`);
}

/** How full the moon of an age is: the mark for those who do not see colours. */
const MOONS = { now: 'M8 1 A7 7 0 1 1 7.99 1 Z', season: 'M8 1 A7 7 0 0 0 8 15 Z', old: '', never: '' };

/** @param {LinePart['fresh']} fresh */
export function moon(fresh) {
  return s(
    'svg',
    { class: `moon moon-${fresh}`, viewBox: '0 0 16 16', 'aria-hidden': 'true' },
    s('circle', { cx: 8, cy: 8, r: 7 }),
    MOONS[fresh] !== '' && s('path', { d: MOONS[fresh] }),
  );
}

/** What the marks on the line say. @param {import('../app.js').App} app */
function legend(app) {
  const mark = (/** @type {Element} */ drawn, /** @type {string} */ says) => h('li', {}, h('span', { class: 'tile-state tile-age' }, drawn), ' ', says);
  return h(
    'details',
    { class: 'fold legend' },
    h('summary', {}, 'What the marks say'),
    h(
      'ul',
      { class: 'plain' },
      ...app.contents.words.map(({ word, reads }) => mark(sign(word), reads)),
      mark(moon('now'), 'read in the last two weeks'),
      mark(moon('season'), 'read in the last half year'),
      mark(moon('old'), 'read longer ago, or never'),
    ),
    h('p', {}, 'A limit decides; a guide is common practice and only compares. “Partly”: OK as far as it was measured. “Unsure”: not enough to tell.'),
  );
}

/**
 * What is begun and what is due, three lines of it.
 * @param {LineView} line
 * @param {import('../../wasm/marinecalc.js').ListedWork[]} begun
 * @param {import('./leads.js').Lead[]} [leads] readings that come to their limit
 */
export function dueList({ due, moreDue }, begun, leads = []) {
  const shown = due.slice(0, Math.max(1, due.length - begun.length - leads.length));
  const more = moreDue + due.length - shown.length;
  return h(
    'section',
    { class: 'due', 'aria-labelledby': 'due-title' },
    h('h2', { id: 'due-title' }, begun.length > 0 ? 'Begun and due ' : 'Due ', more > 0 && h('a', { href: '#/sheet/service-schedule' }, `and ${more} more`)),
    due.length + begun.length + leads.length === 0
      ? h('p', {}, 'Nothing is due. ', h('a', { href: '#/sheet/service-schedule' }, 'Service schedule'))
      : h(
          'ul',
          { class: 'rows' },
          ...begun.slice(0, 2).map((w) => h('li', { class: 'begun' }, h('a', { href: `#/procedure/${w.id}` }, h('span', { class: 'row-what' }, w.title), h('span', { class: 'row-when' }, `${w.ticked} of ${w.steps} done`)))),
          ...leads.slice(0, 3).map(({ reading, title, when }) =>
            h('li', { class: 'grows' }, h('a', { href: `#/readings/${encodeURIComponent(reading)}` }, h('span', { class: 'row-what' }, title), h('span', { class: 'row-when' }, when))),
          ),
          ...shown.map((d) =>
            h('li', {}, h('a', { href: d.part ? `#/part/${d.part}` : '#/sheet/service-schedule' }, h('span', { class: 'row-what' }, d.what), h('span', { class: 'row-when' }, dueWhen(d)))),
          ),
        ),
  );
}

/** @param {import('../../wasm/marinecalc.js').DueCare} due */
export function dueWhen({ state, by }) {
  if (state === 'soon' && by) return `by ${by}`;
  return state;
}

/**
 * Where there is no boat yet.
 * @param {import('../app.js').App} app
 */
function beginning(app) {
  return h(
    'section',
    { class: 'begin', 'aria-labelledby': 'begin-title' },
    h('h2', { id: 'begin-title' }, 'Start with your boat'),
    h('p', {}, 'Two or three figures are enough. Or look round on a made-up boat.'),
    h(
      'div',
      { class: 'tools' },
      h('a', { href: '#/boat', class: 'as-button' }, 'Start with your boat'),
      ...app.demonstrationBoats.map((boat) =>
        button(`Try ${nameOf(boat)}`, () => {
          addOnce(boat);
          app.redraw();
        }),
      ),
    ),
  );
}

/** @param {import('../app.js').App} app */
function usedList(app) {
  const used = usedLast();
  const first = ['coupling-alignment', 'bolt-preload', 'gland-heat'];
  const often = app.contents.calculations.filter((c) => first.includes(c.id)).map((c) => ({ hash: `#/sheet/${c.id}`, title: c.title }));
  const shown = [...used, ...often.filter((o) => used.every((u) => u.hash !== o.hash))].slice(0, MOST);
  return h(
    'section',
    { class: 'used', 'aria-labelledby': 'used-title' },
    h('h2', { id: 'used-title' }, used.length > 0 ? 'Used last' : 'Often used'),
    h('ul', { class: 'chips' }, ...shown.map(({ hash, title }) => h('li', {}, h('a', { href: hash }, title)))),
  );
}
