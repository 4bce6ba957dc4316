// Dated entries of the log: the form of one, and all of them by day.

import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { button, h } from '../kit/dom.js';
import { at, tidied } from '../kit/pointer.js';
import { lateFold } from '../sheet/folds.js';
import { units } from '../store/settings.js';
import { change, onShelf } from '../store/shelf.js';
import { boatOf } from './asks.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * The form of a dated entry, checked by itself.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {Json} row
 * @param {string} prefix
 * @param {(name: string) => boolean} shown which members it has
 * @param {(row: Json) => void} [changed]
 */
export function entryForm(app, id, row, prefix, shown, changed) {
  const asked = app.calculator.call(boatOf());
  if (!asked.ok) throw new Error(asked.problems.map(inWords).join(' '));
  const item = /** @type {import('../../wasm/marinecalc.js').Schema} */ (asked.schema.properties?.readings?.items ?? {});
  const schema = { ...item, properties: Object.fromEntries(Object.entries(item.properties ?? {}).filter(([name]) => shown(name))) };
  const form = new Form({
    root: asked.schema,
    schema,
    value: row,
    prefix,
    units: units(),
    choices: asked.choices ?? {},
    read: app.read,
    folds: true,
    changed: (value) => changed?.(/** @type {Json} */ (tidied(value, row) ?? {})),
  });
  /** Whether it can be kept; what is wrong stands at its field. @param {Json} value */
  const check = (value) => {
    const { mounts, ownReadings } = onShelf(id).boat;
    const reply = app.calculator.call({ ask: 'boat', boat: { name: 'X', ...(mounts ? { mounts } : {}), ...(ownReadings ? { ownReadings } : {}), readings: [value] } });
    const problems = reply.ok ? [] : reply.problems.map((p) => ({ ...p, where: p.where.replace(/^\/boat\/readings\/0/, '') }));
    form.take(problems);
    return problems;
  };
  return { form, check };
}

const PAGE = 50;

/**
 * Every dated entry, newest first, fifty at a time; each opens to its form.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {() => void} again
 */
export function byDay(app, id, again) {
  const readings = at(onShelf(id).boat, '/readings');
  const all = Array.isArray(readings) ? /** @type {Json[]} */ (readings) : [];
  if (all.length === 0) return '';
  const order = all.map((_, i) => i).sort((a, b) => (day(all[b]) < day(all[a]) ? -1 : day(all[b]) > day(all[a]) ? 1 : b - a));
  return lateFold(`All readings by day (${all.length})`, () => {
    const list = h('div', {});
    const next = button('', () => add(), { class: 'quiet' });
    let shown = 0;
    const add = () => {
      for (const i of order.slice(shown, shown + PAGE)) list.append(entryFold(app, id, i, again));
      shown = Math.min(shown + PAGE, order.length);
      next.textContent = `${Math.min(PAGE, order.length - shown)} more`;
      next.hidden = shown === order.length;
    };
    add();
    return [list, next];
  });
}

/** The names of what an entry holds besides when and by whom it was read. @param {Json} entry */
export function readIn(entry) {
  return Object.keys(entry).filter((name) => !['date', 'time', 'source'].includes(name));
}

/** When an entry was read, to sort by. @param {Json | undefined} entry */
function day(entry) {
  return `${entry?.date ?? ''}${entry?.time ?? ''}`;
}

/**
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {number} i of the entry
 * @param {() => void} again
 */
function entryFold(app, id, i, again) {
  const list = () => /** @type {Json[]} */ (at(onShelf(id).boat, '/readings') ?? []);
  const entry = list()[i] ?? {};
  const n = readIn(entry).length;
  return lateFold(`${[entry.date ?? 'no date', entry.time].filter(Boolean).join(' ')}: ${n === 1 ? 'one entry' : `${n} entries`}`, () => {
    let now = list()[i] ?? {};
    const { form, check } = entryForm(app, id, now, `reading-${i}`, () => true, (value) => {
      const { boat } = onShelf(id);
      const readings = list().map((row, k) => (k === i ? value : row));
      now = value;
      change(id, boat, { ...boat, readings });
      check(value);
    });
    form.showOrigins({});
    check(now);
    const away = button('Remove this day', () => {
      const { boat } = onShelf(id);
      const to = { ...boat, readings: list().filter((_, k) => k !== i) };
      change(id, boat, to);
      const back = button('Put it back', () => {
        change(id, to, boat);
        again();
      });
      away.replaceWith(h('span', {}, 'Removed. '), back);
      form.element.remove();
      back.focus();
    }, { class: 'quiet' });
    return [form.element, h('p', { class: 'tools' }, away)];
  });
}
