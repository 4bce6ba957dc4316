// A plan as a strip of days: how she lies on them, on which the boat is open,
// how much is done; below it the steps day by day.

import { bound, button, h, s } from '../kit/dom.js';
import { cells } from './cells.js';

/** @typedef {import('../../wasm/marinecalc.js').Table} Table */
/** @typedef {{ from: string, to: string, kind: string, note?: string }} Window */

const DAY = 86400000;
const number = (/** @type {string} */ day) => Math.round(Date.parse(`${day}T00:00Z`) / DAY);
const KINDS = /** @type {{ [kind: string]: string }} */ ({ afloat: 'afloat', ashore: 'ashore', 'haul-out': 'lifted', booked: 'haul-out booked', not: 'no work', ready: 'ready to run', 'no-lift': 'no lift', open: 'open' });

/** A day as people say it. @param {string} day */
export function said(day) {
  return new Date(number(day) * DAY).toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC' });
}

/**
 * Steps by the day on which they begin; those without a day last.
 * @template T
 * @param {T[]} steps
 * @param {(step: T) => string} day
 * @returns {[string, T[]][]}
 */
export function byDay(steps, day) {
  /** @type {Map<string, T[]>} */
  const days = new Map();
  for (const step of steps) days.set(day(step), [...(days.get(day(step)) ?? []), step]);
  return [...days].sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a < b ? -1 : 1));
}

/**
 * Where a stretch of days lies on a strip, in whole days; null where it is off it.
 * @param {{ from: string, to: string }} of
 * @param {number} first
 * @param {number} last
 */
export function stretch({ from, to }, first, last) {
  const a = Math.max(number(from), first);
  const b = Math.min(number(to), last);
  return a <= b ? { x: a - first, width: b - a + 1 } : null;
}

/**
 * @param {Table} table
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @param {unknown} windows
 * @param {(step: string) => void} go to a step, by its id, with its figures and its tick
 */
export function dayStrip(table, sheet, windows, go) {
  const cell = cells(table);
  const text = (/** @type {typeof table.rows[0]} */ row, /** @type {string} */ column) => cell(row, column)?.text ?? '';
  const result = (/** @type {string} */ name) => sheet.results.find((r) => r.name === name)?.text ?? '';
  const dated = table.rows.filter((r) => text(r, 'start') !== '');
  const days = byDay(table.rows, (r) => text(r, 'start'));
  const open = { from: result('openFrom'), to: result('openTo') };
  const isOpen = (/** @type {string} */ day) => open.from !== '' && day >= open.from && day <= open.to;
  const kinds = (Array.isArray(windows) ? /** @type {Window[]} */ (windows) : []).filter((w) => w.from && w.to);
  const lies = (/** @type {string} */ day) => kinds.filter((w) => day >= w.from && day <= w.to).map((w) => KINDS[w.kind] ?? w.kind);
  return h(
    'section',
    { class: 'days-of' },
    h('h3', {}, 'Day by day'),
    dated.length > 0 && strip(dated.map((r) => ({ from: text(r, 'start'), to: text(r, 'end'), hours: (cell(r, 'hours')?.si ?? 0) / 3600 })), kinds, open),
    h(
      'ol',
      { class: 'agenda' },
      ...days.map(([day, rows]) =>
        h(
          'li',
          { class: isOpen(day) ? 'open-day' : false },
          h('h4', {}, day === '' ? 'No day yet' : said(day), h('span', { class: 'aside' }, day !== '' && [isOpen(day) && 'she lies open', ...lies(day)].filter(Boolean).map((w) => ` · ${w}`).join(''))),
          ...rows.map((r) => h('p', {}, button(text(r, 'step'), () => go(text(r, 'row')), { class: 'link' }), h('span', {}, bound([text(r, 'hours'), cell(r, 'place')?.word !== 'either' && text(r, 'place'), day === '' && text(r, 'waits')].filter(Boolean).join(', '))))),
        ),
      ),
    ),
  );
}

/**
 * @param {{ from: string, to: string, hours: number }[]} steps
 * @param {Window[]} windows
 * @param {{ from: string, to: string }} open
 */
function strip(steps, windows, open) {
  const first = Math.min(...steps.map((d) => number(d.from))) - 2;
  const last = Math.max(...steps.map((d) => number(d.to))) + 2;
  const count = last - first + 1;
  const bands = windows.flatMap((w) => {
    const at = stretch(w, first, last);
    return at ? [{ ...at, kind: w.kind }] : [];
  });
  const block = open.from === '' ? null : stretch(open, first, last);
  const months = Array.from({ length: count }, (_, i) => new Date((first + i) * DAY)).flatMap((d, i) => (d.getUTCDate() === 1 ? [{ i, d }] : []));
  if (!(months[0] && months[0].i < count / 5)) months.unshift({ i: 0, d: new Date(first * DAY) });
  const labels = inRows(months.map(({ i, d }) => ({ at: i / count, word: d.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' }) })))[0] ?? []; // of more there is no need
  const words = bands.map((b) => ({ at: b.x / count, word: KINDS[b.kind] ?? b.kind }));
  if (block) words.push({ at: block.x / count, word: KINDS.open ?? '' });
  return h(
    'div',
    { class: 'strip', role: 'img', 'aria-label': `Strip of ${count} days${block ? `; she lies open from ${said(open.from)} to ${said(open.to)}` : ''}.` },
    monthRow(labels),
    s(
      'svg',
      { viewBox: `0 0 ${count} 40`, preserveAspectRatio: 'none' },
      ...bands.map((b) => s('rect', { class: `kind-${b.kind}`, x: b.x, y: 0, width: b.width, height: 13 })),
      block && s('rect', { class: 'open-block', ...block, y: 14, height: 12 }),
      ...steps.map((d) => s('rect', { class: 'job-bar', ...(stretch(d, first, last) ?? {}), y: 27, height: 13 })),
    ),
    ...inRows(words).map(monthRow),
  );
}

/** @typedef {{ at: number, word: string }} Label at a share of the strip */

/**
 * Labels in as many rows as it takes that none prints over another.
 * @param {Label[]} labels
 */
export function inRows(labels) {
  /** @type {Label[][]} */
  const rows = [];
  for (const label of labels) {
    const row = rows.find((r) => r.every((other) => Math.abs(other.at - label.at) > 0.05 + 0.025 * Math.max(other.word.length, label.word.length)));
    if (row) row.push(label);
    else rows.push([label]);
  }
  return rows;
}

const monthRow = (/** @type {Label[]} */ row) => h('div', { class: 'months' }, ...row.map(({ at, word }) => placed(h('span', {}, word), at)));

/**
 * @param {HTMLElement} made
 * @param {number} at
 */
function placed(made, at) {
  made.style.left = `${100 * at}%`;
  if (at > 0.7) made.style.transform = 'translateX(-60%)';
  return made;
}
