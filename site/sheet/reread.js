// What the coupling reads after a move, typed as it is read: a gap at each place
// of the clock, how high the flange stands. Differences are the sheet's own affair.

import { bound, button, h } from '../kit/dom.js';
import { units } from '../store/settings.js';
import { inHand, typed } from '../store/shelf.js';

/** @typedef {import('../form/field.js').Field} Field */

/** What a difference is read as: that at the first hour less that at the other. @type {{ [name: string]: [number, number] }} */
const GAPS = { gapVertical: [12, 6], gapHorizontal: [3, 9] };

const PLAIN = ['offsetVertical', 'offsetHorizontal'];

/**
 * The gaps as they were read last, with the shaft as found: those typed on the
 * alignment sheet, or the boat's newest.
 * @param {import('../app.js').App} app
 * @returns {Map<number, string>} by the hour
 */
export function gapsRead(app) {
  const { id, boat } = inHand();
  const gaps = (/** @type {any} */ of, /** @type {string} */ name) => (Array.isArray(of?.[name]) ? /** @type {any[]} */ (of[name]) : []).filter((row) => row?.gap !== undefined);
  const own = gaps(typed(id, 'coupling-alignment'), 'readings');
  const log = /** @type {any[]} */ (Array.isArray(boat['readings']) ? boat['readings'] : []).filter((r) => gaps(r, 'couplingGaps').length > 0);
  const newest = log.reduce((a, b) => (`${b.date}${b.time ?? ''}` >= `${a?.date ?? ''}${a?.time ?? ''}` ? b : a), undefined);
  const read = new Map();
  for (const { clock, gap, turn } of own.length > 0 ? own : gaps(newest, 'couplingGaps')) {
    const hour = Math.round(((app.read.si(clock, { quantity: 'direction' }) ?? NaN) * 6) / Math.PI) || 12;
    if (!app.read.si(turn, { quantity: 'angle' }) && !read.has(hour)) read.set(hour, String(gap));
  }
  return read;
}

/**
 * The fold in which it is typed.
 * @param {import('../app.js').App} app
 * @param {import('../form/form.js').Form} form
 * @param {(offset: boolean) => string} hindered why nothing can be planned anew yet, with or without the flange's height read
 * @param {() => void} planned told that something is put
 */
export function reread(app, form, hindered, planned) {
  const last = gapsRead(app);
  const unit = (/** @type {Field} */ { schema: { units: [metric = 'mm', us = metric] = [] } }) => (units() === 'us' ? us : metric);
  const entry = (/** @type {string} */ title, /** @type {string} */ was) => {
    const input = h('input', { type: 'text', autocomplete: 'off', placeholder: was });
    return { input, label: h('label', { class: 'again' }, title, input) };
  };
  /** @type {{ field: Field, labels: HTMLElement[], value: () => string | undefined }[]} value: empty where nothing is typed, undefined where half of it is */
  const all = [];
  for (const [name, hours] of Object.entries(GAPS)) {
    const field = form.fields.get(`/${name}`);
    if (!field) continue;
    const both = hours.map((hour) => entry(`Gap at ${hour} o'clock, ${unit(field)}`, last.get(hour) ?? ''));
    const value = () => {
      const [a = '', b = ''] = both.map(({ input }) => input.value.trim());
      if (a === '' && b === '') return '';
      const [x, y, one] = [a, b, '1'].map((text) => app.read.si(app.read(text, field.schema, unit(field)), field.schema));
      return x === undefined || y === undefined || !one ? undefined : `${Number(((x - y) / one).toFixed(4))} ${unit(field)}`;
    };
    all.push({ field, labels: both.map(({ label }) => label), value });
  }
  for (const name of PLAIN) {
    const field = form.fields.get(`/${name}`);
    if (!field) continue;
    const { input, label } = entry(`${field.title}, ${unit(field)}`, field.control.getAttribute('placeholder')?.split(' · ')[0] ?? '');
    all.push({ field, labels: [label], value: () => input.value.trim() });
  }
  const hindrance = h('p', { class: 'wrong', role: 'status' });
  const made = h('details', { class: 'fold' }, h('summary', {}, 'Read again: type it, and plan anew'), ...all.flatMap(({ labels }) => labels));
  made.append(
    button('Plan anew', () => {
      const now = all.map(({ field, value }) => ({ field, text: value() }));
      const half = now.find(({ text }) => text === undefined);
      const hours = GAPS[half?.field.pointer.slice(1) ?? ''];
      hindrance.textContent = hours ? bound(`Type both gaps, at ${hours.join(' and ')} o'clock.`) : hindered(now.some(({ field, text }) => field.pointer === '/offsetVertical' && text));
      if (hindrance.textContent) return;
      if (now.some(({ text }) => text)) planned();
      for (const { field, text } of now) if (text) field.enter(text);
    }),
    hindrance,
    h('p', { class: 'help' }, h('a', { href: '#/sheet/coupling-alignment' }, 'Or read all gaps on the face.')),
  );
  return made;
}
