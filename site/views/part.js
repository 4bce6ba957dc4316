// One part of the line: how it stands, what was read of it over time, what can
// be calculated and done.

import { inWords } from '../form/field.js';
import { bound, button, h } from '../kit/dom.js';
import { lateFold } from '../sheet/folds.js';
import { picture } from '../sheet/picture.js';
import { badge, isPast, verdictCard } from '../sheet/verdicts.js';
import { inHand, nameOf, toSend } from '../store/shelf.js';
import { partOf } from './asks.js';
import { dueWhen, mark, moon } from './home.js';
import { tellLead } from './leads.js';

/** @typedef {import('../../wasm/marinecalc.js').PartView} PartView */
/** @typedef {import('../../wasm/marinecalc.js').PartState} PartState */
/** @typedef {import('../../wasm/marinecalc.js').ReadingChart} ReadingChart */

/** Title of each part, and what it is for: what is known of it without the calculator. @returns {{ [id: string]: [string, string] }} */
const partsOfLine = () => /** @type {any} */ (globalThis).partsOfLine;

/**
 * The head of a part, at once; the rest has to be worked out.
 * @param {HTMLElement} main
 * @param {string} id
 */
export function partHead(main, id) {
  const parts = partsOfLine();
  const [title, about] = (Object.hasOwn(parts, id) && parts[id]) || [];
  if (title === undefined) return undefined;
  const rest = h('div', {}, h('p', { class: 'part-state', role: 'status' }, 'Being worked out…'));
  main.replaceChildren(h('p', { class: 'back' }, h('a', { href: '#/' }, '← Home')), h('h1', {}, title), h('p', { class: 'lead' }, about), rest);
  return { title, rest };
}

/** @type {import('../app.js').View} */
export function showPart(app, main, id = '') {
  const head = partHead(main, id);
  if (!head) {
    main.append(h('h1', {}, 'No such part'), h('p', {}, h('a', { href: '#/' }, 'The line')));
    return 'No such part';
  }
  const boat = toSend(inHand().boat);
  void app.aside(partOf(id, boat)).then(async (asked) => {
    const reply = asked.ok || !boat ? asked : await app.aside(partOf(id));
    if (!head.rest.isConnected) return;
    if (reply.ok) showRest(app, head.rest, reply.part, boat, asked.ok);
    else head.rest.replaceChildren(...reply.problems.map((p) => h('p', { class: 'wrong' }, inWords(p))));
  });
  return head.title;
}

/**
 * @param {import('../app.js').App} app
 * @param {HTMLElement} rest
 * @param {PartView} part
 * @param {import('../../wasm/marinecalc.js').Json | undefined} boat
 * @param {boolean} sound whether it is of the boat, whose file is right
 */
function showRest(app, rest, part, boat, sound) {
  const leads = h('div', {});
  const state = h('div', { class: 'part-state' });
  const toDo = work(part);
  const show = (/** @type {PartState} */ now) => {
    state.replaceChildren(...stateOf(now));
    if (toDo && isPast(now.word)) state.append(button('Work, step by step', () => toDo.scrollIntoView(), { class: 'link' }));
  };
  rest.replaceChildren(
    sound ? '' : h('p', { class: 'wrong' }, h('a', { href: '#/boat' }, 'Something in the boat’s file is to be put right.')),
    state,
    ...present([
      part.found.length > 0 && section('Found', h('ul', { class: 'plain' }, ...part.found.map((f) => h('li', {}, h('strong', {}, f.title), ` ${f.text}`)))),
      readings(part, leads),
      calculations(part),
      part.care.length > 0 &&
        section(
          'Due',
          h('ul', { class: 'rows' }, ...part.care.map((c) => h('li', {}, h('details', { class: 'fold' }, h('summary', {}, h('span', { class: 'row-what' }, c.what), h('span', { class: 'row-when' }, dueWhen(c))), h('p', {}, c.how), h('p', { class: 'help' }, `Last: ${c.last}.`))))),
          h('p', {}, h('a', { href: '#/sheet/service-schedule' }, 'Service schedule')),
        ),
      toDo,
      known(part, boat ? nameOf(boat) : 'your boat'),
      part.findings.length > 0 && lateFold(`Every limit, most urgent first (${part.findings.length})`, () => part.findings.map(({ verdict }) => verdictCard(verdict))),
      part.open.length > 0 && lateFold(`Limits without a reading (${part.open.length})`, () => part.open.map(({ verdict }) => verdictCard(verdict))),
    ]),
  );
  show(part.state);
  // What was found on it rests on the whole boat.
  if (!boat || !sound) return;
  for (const series of part.readings) tellLead(app, boat, series, leads);
  mark(app, boat, state, ({ parts }) => parts.filter((p) => p.part === part.id).forEach(show));
}

/** @param {PartState} state */
function stateOf({ word, reads, sentence, calculation, sheet }) {
  return [
    h('p', {}, badge(word, reads)),
    ...(sentence ? [h('p', {}, bound(sentence))] : []),
    ...(calculation ? [h('p', {}, h('a', { href: `#/sheet/${calculation}` }, sheet))] : []),
  ];
}

/**
 * @param {string} title
 * @param {...(Node | string)} inside
 */
function section(title, ...inside) {
  return h('section', {}, h('h2', {}, title), ...inside);
}

/**
 * @param {PartView} part
 * @param {HTMLElement} leads for where they lead
 */
function readings({ readings: list, ago, read, fresh }, leads) {
  return section(
    'Readings',
    list.length === 0
      ? h('p', {}, 'Nothing was read of it yet.')
      : h('p', { class: 'tile-age' }, moon(fresh), read ? `Last read ${ago}` : 'Not read'),
    leads,
    list.length > 0 ? h('ul', { class: 'charts' }, ...list.map((c) => h('li', {}, chartLine(c)))) : '',
    h('p', {}, h('a', { href: '#/readings' }, 'Log a reading')),
  );
}

/**
 * A series in a line: what, its newest value and day, and its small chart.
 * @param {ReadingChart} chart
 */
export function chartLine({ reading, title, value, age, fresh, readings: n, chart }) {
  return h(
    'a',
    { href: `#/readings/${encodeURIComponent(reading)}`, class: 'chart-line', 'data-chart': reading },
    h('span', { class: 'chart-title' }, title),
    h('span', { class: 'chart-value' }, value),
    h('span', { class: 'chart-age' }, moon(fresh), `${age}, ${n === 1 ? 'one reading' : `${n} readings`}`),
    h('span', { class: 'spark drawing' }, chart ? picture(chart) : ''),
  );
}

/** @param {PartView} part */
function calculations({ sheets }) {
  return section(
    'Calculations',
    h(
      'ul',
      { class: 'rows sheets' },
      ...sheets.map((line) =>
        h(
          'li',
          {},
          h(
            'a',
            { href: `#/sheet/${line.calculation}` },
            h('span', { class: 'row-what' }, line.title),
            h('span', { class: 'row-says' }, line.says),
            line.word && line.word !== 'not measured' ? badge(line.word, line.reads ?? '') : '',
          ),
        ),
      ),
    ),
  );
}

/** @param {PartView} part */
function work({ work: list }) {
  if (list.length === 0) return false;
  const shown = list.filter((w) => w.ticked > 0);
  const rest = list.filter((w) => w.ticked === 0);
  const rows = (/** @type {PartView['work']} */ some) =>
    h('ul', { class: 'rows' }, ...some.map((w) => h('li', {}, h('a', { href: `#/procedure/${w.id}` }, h('span', { class: 'row-what' }, w.title), h('span', { class: 'row-when' }, w.ticked > 0 ? `${w.ticked} of ${w.steps} done` : w.steps === 1 ? '1 step' : `${w.steps} steps`)))));
  return section(
    'Work, step by step',
    ...(shown.length > 0 ? [rows(shown)] : []),
    rest.length > 4 ? h('details', { class: 'fold' }, h('summary', {}, `${rest.length} pieces of work`), rows(rest)) : rows(rest),
  );
}

/**
 * @param {PartView} part
 * @param {string} name
 */
function known({ id, known: n, asked: of, asks }, name) {
  const open = asks.filter((a) => !a.known);
  return section(
    `Known of ${name}`,
    h('p', {}, of === 0 ? 'Its calculations ask nothing of the boat.' : `${n} of ${of} known. `, open.length > 0 ? `Open: ${open.slice(0, 6).map((a) => a.title).join(', ')}${open.length > 6 ? `, and ${open.length - 6} more` : ''}. ` : '', h('a', { href: `#/boat/${id}` }, open.length > 0 ? 'Fill in' : 'Look at them')),
  );
}

/**
 * @param {(HTMLElement | false)[]} parts
 * @returns {HTMLElement[]}
 */
function present(parts) {
  return parts.filter((p) => p instanceof HTMLElement);
}
