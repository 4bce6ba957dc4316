// The job card: what goes on one sheet of paper and down to the boat. It is
// made when the page is printed, unless the working is asked for.

import { today } from '../kit/dates.js';
import { h, s } from '../kit/dom.js';
import { firstResult, leadVerdict, told } from './answer.js';
import { cautionList } from './cautions.js';
import { halfFirst } from './nuts.js';
import { drawing } from './sheet.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */

/** @type {(() => { sheet: Sheet, boat: string, asked: string[], passes?: import('./passes.js').Passes | null } | null) | null} */
let source = null;

/**
 * Says what a card would be made of; null where the view has none.
 * @param {typeof source} of
 */
export function cardOf(of) {
  source = of;
}

/** Prints the sheet with its working. */
export function printWithWorking() {
  const kept = source;
  source = null;
  print();
  source = kept;
}

/** Puts the card before the page while it is printed. */
export function makeCardsForPrint() {
  addEventListener('beforeprint', () => {
    document.querySelector('.card')?.remove();
    const of = document.querySelector('.answers') && source?.();
    if (!of) return;
    document.querySelector('.foot')?.before(card(of.sheet, of.boat, of.asked, of.passes));
    document.body.classList.add('on-card');
  });
  addEventListener('afterprint', () => {
    document.querySelector('.card')?.remove();
    document.body.classList.remove('on-card');
  });
}

/**
 * @param {Sheet} sheet
 * @param {string} boat
 * @param {string[]} asked
 * @param {import('./passes.js').Passes | null} [passes]
 */
export function card(sheet, boat, asked, passes) {
  const first = firstResult(sheet);
  const lead = leadVerdict(sheet);
  const [gravest, ...others] = [(sheet.cautions ?? []).slice(0, 3), ...(sheet.cautions ?? []).slice(3)];
  const inputs = asked.flatMap((name) => sheet.inputs.filter((i) => i.name === name));
  const list = (sheet.tables ?? []).find(isShort);
  const also = (sheet.results ?? []).filter((r) => r.level !== 'detail' && r !== first && r.kind).slice(0, list ? 3 : 6);
  const [picture] = sheet.drawings ?? [];
  const steps = firstSteps(sheet.next ?? [], list ? 3 : 5);
  const left = (sheet.next ?? []).length - steps.length;
  return h(
    'section',
    { class: 'card' },
    h('header', {}, h('h1', {}, sheet.title), left > 0 && h('p', {}, left > 1 ? `${left} more steps on the sheet` : 'One more step on the sheet'), h('p', {}, `${boat} · ${today()}`)),
    h(
      'div',
      { class: 'card-top' },
      h(
        'div',
        {},
        first && h('p', { class: 'card-of' }, first.title),
        ...(first ? (first.unsettled ? [h('p', { class: 'card-of' }, h('strong', {}, first.unsettled))] : told(first)) : []),
        lead && h('p', {}, lead.sentence),
        ...(passes ? ring(passes) : []),
      ),
      pairs([...inputs.map((i) => [i.title, i.unsettled ?? i.text]), ...also.map((r) => [r.title, r.text])]),
    ),
    h(
      'div',
      { class: picture ? 'card-middle' : '' },
      picture && drawing({ ...picture, description: '' }),
      h('ol', {}, ...steps.map((n) => h('li', {}, '☐ ', n.text))),
    ),
    list && halfFirst(list) !== '' && h('p', {}, h('strong', {}, halfFirst(list))),
    list && cut(list),
    cautionList(gravest ?? []),
    others.length > 0 && h('p', { class: 'card-more' }, h('strong', {}, 'Also: '), others.map((c) => `${c.signal}: ${c.short}.`).join(' ')),
    writeIn(),
  );
}

const ROOM = 700; // letters of steps beside a picture, with which the longest card is one page

/**
 * The first steps, as many as the page has room for.
 * @template {{ text: string }} N
 * @param {N[]} next
 * @param {number} most
 */
function firstSteps(next, most) {
  let room = ROOM;
  return next.slice(0, most).filter((n, i) => (room -= n.text.length) >= 0 || i === 0);
}

/** Whether a list is short enough to leave room for the boxes. @param {import('../../wasm/marinecalc.js').Table} list */
function isShort({ level, rows }) {
  return level !== 'detail' && rows.length > 0 && rows.length <= 8 && rows.every((r) => r.cells.every((c) => c.text.length <= 48));
}

/**
 * A list in its first columns, as many as go side by side.
 * @param {import('../../wasm/marinecalc.js').Table} list
 */
function cut(list) {
  const shown = list.columns.map((c, i) => ({ ...c, i })).filter((c) => c.level !== 'detail').slice(0, 5);
  return h(
    'table',
    {},
    h('thead', {}, h('tr', {}, ...shown.map((c) => h('th', { scope: 'col' }, c.title)))),
    h('tbody', {}, ...list.rows.map((row) => h('tr', {}, ...shown.map((c) => h('td', {}, row.cells[c.i]?.text))))),
  );
}

/**
 * The bolts round the circle, and the passes.
 * @param {import('./passes.js').Passes} of
 */
function ring({ order, passes }) {
  return [
    s(
      'svg',
      { class: 'ring', viewBox: '-50 -50 100 100', 'aria-hidden': 'true' },
      s('circle', { r: 34 }),
      ...order.flatMap((_, k) => {
        const angle = (2 * Math.PI * k) / order.length;
        const [cx, cy] = [34 * Math.sin(angle), -34 * Math.cos(angle)];
        return [s('circle', { cx, cy, r: 11 }), s('text', { x: cx, y: cy + 5, 'text-anchor': 'middle' }, String(k + 1))];
      }),
    ),
    h('p', {}, h('strong', {}, `Order ${order.join(' - ')}`), `: ${passes.join(', ')}, then once round.`),
  ];
}

/** @param {string[][]} rows */
function pairs(rows) {
  return h('dl', {}, ...rows.flatMap(([name = '', text = '']) => [h('dt', {}, name), h('dd', {}, text)]));
}

/** Boxes for what is found and what is left. */
function writeIn() {
  const heads = ['Reading', 'Gauge', 'Date', 'Engine hours', 'By'];
  return h(
    'table',
    { class: 'boxes' },
    h('thead', {}, h('tr', {}, h('th', {}, ''), ...heads.map((t) => h('th', { scope: 'col' }, t)))),
    h('tbody', {}, ...['As found', 'As left'].map((t) => h('tr', {}, h('th', { scope: 'row' }, t), ...heads.map(() => h('td', {}))))),
  );
}
