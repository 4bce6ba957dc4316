// What if: moves one input and shows how the answer would change. Nothing is
// typed by it; what it shows is gone with the touch on anything else, unless it is used.

import { button, h } from '../kit/dom.js';
import { firstResult, leadVerdict } from './answer.js';
import { badge } from './verdicts.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {{ si: (value: unknown, schema: Schema) => number | undefined }} Reader */

/**
 * A value as a number of the unit that its field has; null where there is nothing
 * to take a share of.
 * @param {number | undefined} si
 * @param {Schema} schema
 * @param {string} unit
 * @param {Reader} read
 */
export function partsOf(si, schema, unit, read) {
  if (si === undefined) return null;
  const at = (/** @type {number} */ n) => (unit === '' ? n : read.si(`${n} ${unit}`, schema) ?? Number.NaN);
  const number = Number(((si - at(0)) / (at(1) - at(0))).toPrecision(6)); // a temperature's nothing is not 0 in SI
  return Number.isFinite(number) && number !== 0 ? { number, unit } : null;
}

/**
 * That share of a value, to as many figures as a hand can mean.
 * @param {{ number: number, unit: string }} value
 * @param {number} share
 * @param {boolean} whole
 */
export function shareOf({ number, unit }, share, whole) {
  const x = whole ? Math.round(number * share) : Number((number * share).toPrecision(3));
  return `${x}${unit === '' ? '' : ` ${unit}`}`;
}

/**
 * @param {import('../../wasm/marinecalc.js').Schema} input
 * @param {() => Sheet | null} sheet as it stands
 * @param {(name: string, value: unknown) => Promise<Sheet | null>} tried the sheet with something else in one input
 * @param {(name: string, text: string) => void} use
 * @param {Reader} read
 * @param {(schema: Schema) => string} unit of its field
 * @returns its element; drawn, when the sheet is; touch, when a field of an input is
 */
export function whatIf(input, sheet, tried, use, read, unit) {
  const properties = input.properties ?? {};
  const isWhole = (/** @type {string} */ name) => [properties[name]?.type].flat().includes('integer');
  const pick = h('select', { 'aria-label': 'Input to change' });
  let touched = ''; // the input whose field was touched last
  const slide = h('input', { type: 'range', min: 50, max: 150, step: 1, value: 100, 'aria-label': 'Share of what it is, per cent' });
  const said = h('div', { role: 'status' });
  const useIt = button('Use it', () => {
    const now = value();
    if (now) use(pick.value, now);
  });
  const back = button('Back to what it is', () => set(100), { class: 'quiet' });
  const step = (/** @type {number} */ by) => button(by < 0 ? '−' : '+', () => set(Number(slide.value) + by), { 'aria-label': by < 0 ? 'Less' : 'More' });
  const made = h(
    'details',
    { class: 'fold what-if' },
    h('summary', {}, 'What if…'),
    pick,
    h('div', { class: 'entry' }, step(-5), slide, step(5)),
    said,
    h('div', { class: 'tools' }, useIt, back),
  );
  const parts = (/** @type {Sheet['inputs'][0] | undefined} */ i) => {
    const schema = properties[i?.name ?? ''] ?? {};
    return i && partsOf(i.si, schema, unit(schema), read);
  };
  const picked = () => sheet()?.inputs.find((i) => i.name === pick.value);
  const value = () => {
    const of = parts(picked());
    return of && shareOf(of, Number(slide.value) / 100, isWhole(pick.value));
  };
  /** @param {number} share */
  function set(share) {
    slide.value = String(share);
    void show();
  }

  async function show() {
    const was = sheet();
    const now = value();
    const same = Number(slide.value) === 100;
    useIt.disabled = back.disabled = same || !now;
    if (!was || !now) return said.replaceChildren();
    slide.setAttribute('aria-valuetext', now);
    const shown = properties[pick.value]?.quantity || properties[pick.value]?.type !== 'integer' ? now : Number(now);
    const [of, at] = [pick.value, slide.value];
    const then = same ? was : await tried(of, shown);
    if (was !== sheet() || of !== pick.value || at !== slide.value) return; // moved on since
    const [first, lead] = then ? [firstResult(then), leadVerdict(then)] : [];
    useIt.disabled = same || !then;
    said.replaceChildren(
      h('p', {}, h('strong', {}, now), same ? ' as it is' : ` in place of ${picked()?.text ?? ''}`),
      h('p', {}, then ? `${first?.title ?? ''}: ` : 'No answer there.', then && h('strong', {}, `${same ? '' : `${firstResult(was)?.text} → `}${first?.text ?? ''}`), ' ', lead && badge(lead.word, lead.reads)),
    );
  }

  slide.addEventListener('input', () => void show());
  pick.addEventListener('change', () => set(100));
  made.addEventListener('toggle', () => made.open && fill());
  // What was tried is gone with the touch on anything else.
  made.addEventListener('focusout', ({ relatedTarget }) => {
    if (relatedTarget instanceof Node && !made.contains(relatedTarget)) set(100);
  });

  function fill() {
    const now = sheet();
    const weight = new Map((now && firstResult(now)?.shares)?.map((s) => [s.input, s.share]));
    const rank = (/** @type {{ name: string }} */ i) => (input.asks?.includes(i.name) ? 1 : 0) + (weight.get(i.name) ?? 0);
    const order = (now?.inputs ?? []).filter((i) => i.kind && parts(i)).sort((a, b) => rank(b) - rank(a));
    const before = touched || pick.value;
    touched = '';
    pick.replaceChildren(...order.map((i) => h('option', { value: i.name, selected: i.name === before }, `${i.title}: ${i.text}`)));
    set(100);
  }
  return { element: made, drawn: () => made.open && fill(), touch: (/** @type {string} */ name) => (touched = name) };
}
