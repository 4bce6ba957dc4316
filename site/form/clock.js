// A clock face that is the form for readings taken round something: touch a
// place, type what is read there. The face shows all readings, and the places
// that have none yet.

import { button, h, s } from '../kit/dom.js';
import { at, withAt } from '../kit/pointer.js';
import { unitFor } from './units.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ hour: number, again: boolean }} Place */

/**
 * What a row of readings round the clock is made of.
 * @typedef {object} Round
 * @property {string} where the direction's name
 * @property {[string, Schema][]} values what is read at a place
 * @property {string | undefined} turn how far all was turned before
 * @property {boolean} closes whether 12 o'clock is read again at the end
 * @property {{ [name: string]: Schema }} parts
 */

/**
 * The parts of such a row; null where a list is of another kind.
 * @param {Schema} list
 * @param {[string, Schema][]} parts
 * @returns {Round | null}
 */
export function roundOf(list, parts) {
  const of = (/** @type {string} */ kind) => parts.filter(([, p]) => p.quantity === kind);
  const [where] = of('direction').map(([name]) => name);
  const values = of('length');
  if (where === undefined || values.length === 0) return null;
  const example = /** @type {Json[]} */ (Array.isArray(list.examples?.[0]) ? list.examples[0] : []);
  return {
    where,
    values,
    turn: of('angle')[0]?.[0],
    closes: example.length > 2 && example[0]?.[where] === example.at(-1)?.[where],
    parts: Object.fromEntries(parts),
  };
}

/**
 * The hour of a direction, over 0 up to 12.
 * @param {number} si radians from the top
 */
export function hourOf(si) {
  const hour = Math.round(((((si * 6) / Math.PI) % 12) + 12) * 100) / 100 % 12;
  return hour === 0 ? 12 : hour;
}

/** An hour as it is said and typed. @param {number} hour */
export function oclock(hour) {
  const minutes = Math.round((hour % 1) * 60);
  return minutes === 0 ? `${hour} o'clock` : `${Math.floor(hour) || 12}:${String(minutes).padStart(2, '0')}`;
}

/**
 * The places of a face in the order in which they are read, those that rows
 * have beside them, and 12 o'clock again where that closes the round.
 * @param {number} count
 * @param {number[]} others hours that rows have
 * @param {boolean} closes
 * @returns {Place[]}
 */
export function placesOf(count, others, closes) {
  const hours = Array.from({ length: count }, (_, i) => (i === 0 ? 12 : (12 * i) / count));
  const all = [...new Set([...hours, ...others])].sort((a, b) => (a % 12) - (b % 12));
  return [...all.map((hour) => ({ hour, again: false })), ...(closes ? [{ hour: 12, again: true }] : [])];
}

/**
 * Which row is that of a place; -1 where there is none.
 * @param {{ hour: number | undefined, turn: number }[]} rows
 * @param {Place} place
 * @param {number} turn in radians
 */
export function rowAt(rows, { hour, again }, turn) {
  const here = rows.flatMap((r, i) => (r.hour === hour && Math.abs(r.turn - turn) < 0.01 ? [i] : []));
  return here[again ? 1 : 0] ?? -1;
}

/**
 * Where a row of readings round the clock was read, as its face says it; empty
 * for other places, and where that is not told.
 * @param {Json} all what is typed
 * @param {Map<string, Round>} rounds by their pointers
 * @param {string} pointer of something in the row
 * @param {{ si(value: unknown, schema: Schema): number | undefined }} read
 */
export function placeOf(all, rounds, pointer, read) {
  const [, list = '', i = ''] = /^(.*)\/(\d+)\/[^/]*$/.exec(pointer) ?? [];
  const round = rounds.get(list);
  const rows = round && at(all, list);
  if (!round || !Array.isArray(rows)) return '';
  const { where, turn, closes, parts } = round;
  const placed = rows.map((row) => ({ at: read.si(row?.[where], parts[where] ?? {}), turn: Math.round((((turn && read.si(row?.[turn], parts[turn] ?? {})) || 0) * 180) / Math.PI) }));
  const row = placed[Number(i)];
  if (row?.at === undefined) return '';
  const again = closes && placed.slice(0, Number(i)).some((r) => r.at === row.at && r.turn === row.turn);
  return `${oclock(hourOf(row.at))}${again ? ' again' : ''}${row.turn ? `, turned ${row.turn}°` : ''}`;
}

/**
 * What was typed without the places of such lists at which nothing was read; null
 * where each was.
 * @param {Json} all
 * @param {Map<string, Round>} rounds by their pointers
 */
export function readAlone(all, rounds) {
  let read = all;
  for (const [pointer, { values }] of rounds) {
    const rows = at(all, pointer);
    if (!Array.isArray(rows)) continue;
    const full = rows.filter((row) => values.some(([name]) => row[name] !== undefined));
    if (full.length < rows.length) read = /** @type {Json} */ (withAt(read, pointer, full.length > 0 ? full : undefined) ?? {});
  }
  return read === all ? null : read;
}

/** Of one press, by the unit: a thou, a feeler's step, a dial's division. @param {string} unit @param {boolean} signed */
function stepIn(unit, signed) {
  return unit === 'thou' ? 1 : unit === 'in' ? 0.001 : signed ? 0.01 : 0.05;
}

let faces = 0;

/**
 * @param {object} of
 * @param {string} of.title
 * @param {Round} of.round
 * @param {() => Json[]} of.rows
 * @param {() => Json[] | undefined} of.given rows that come from elsewhere while none is typed
 * @param {() => boolean} of.ofToday whether those are of today
 * @param {(rows: Json[]) => void} of.put
 * @param {() => Json[]} of.fresh rows to begin with
 * @param {import('../../wasm/marinecalc.js').Units} of.units
 * @param {import('./units.js').Reader} of.read
 */
export function clockFace({ title, round, rows, given, ofToday, put, fresh, units, read }) {
  const { where, values, turn: turnName, closes, parts } = round;
  const id = `face-${++faces}`;
  const typed = () => rows().some((r) => values.some(([name]) => r[name] !== undefined));
  const shown = () => (typed() ? rows() : given() ?? rows());
  const si = (/** @type {unknown} */ value, /** @type {string | undefined} */ name) => (name === undefined ? undefined : read.si(value, parts[name] ?? {}));
  const placed = () =>
    shown().map((r) => {
      const at = si(r[where], where);
      return { hour: at === undefined ? undefined : hourOf(at), turn: si(r[turnName ?? ''], turnName) ?? 0 };
    });
  const hours = () => placed().flatMap((r) => r.hour ?? []);
  let count = hours().some((hour) => hour % 3 !== 0) ? 8 : 4;
  let turn = 0;
  let at = 0;
  let value = values[0]?.[0] ?? '';
  const schema = () => parts[value] ?? {};
  const unit = () => unitFor(schema(), units);
  const places = () => placesOf(count, hours(), closes);
  const signed = () => (schema().minimum ?? 0) < 0;

  const ring = s('svg', { viewBox: '-150 -150 300 300', 'aria-hidden': 'true' });
  const spots = h('div', { class: 'spots' });
  const label = h('label', { for: id });
  const input = h('input', { id, type: 'text', autocomplete: 'off', autocapitalize: 'off', spellcheck: 'false', enterkeyhint: 'next' });
  const modes = h('div', { class: 'modes' });
  const press = (/** @type {number} */ by) => {
    const now = Number.parseFloat(input.value.replace(',', '.')) || 0;
    const next = Number((now + by * stepIn(unit(), signed())).toFixed(4));
    input.value = String(signed() ? next : Math.max(0, next));
    take();
  };
  const sign = button('±', () => {
    if (!/\d/.test(input.value)) return;
    input.value = /^[-−]/.test(input.value) ? input.value.slice(1) : `-${input.value}`;
    take();
  }, { 'aria-label': 'Change the sign' });
  const made = h(
    'div',
    { class: 'face', role: 'group', 'aria-label': title },
    modes,
    h(
      'div',
      { class: 'dial' },
      ring,
      spots,
      h(
        'div',
        { class: 'hub' },
        label,
        h('div', {}, sign, input),
        h('div', {}, button('−', () => press(-1), { 'aria-label': 'One step less' }), button('+', () => press(1), { 'aria-label': 'One step more' }), button('›', next, { 'aria-label': 'Next place' })),
      ),
    ),
  );
  input.addEventListener('input', take);
  made.addEventListener('row', (event) => {
    const { row = -1, name = '' } = event instanceof CustomEvent ? event.detail : {};
    const turned = placed()[row]?.turn ?? turn;
    const at = places().findIndex((place) => rowAt(placed(), place, turned) === row);
    if (at < 0 || !values.some(([n]) => n === name)) return; // it stands in the list alone
    event.preventDefault();
    [value, turn] = [name, turned];
    choose(at);
  });
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    next();
  });

  /** Takes what stands in the entry as the reading of the place. */
  function take() {
    if (given() && !ofToday()) put(fresh()); // what another day read is not mixed with this
    const all = shown().map((r) => ({ ...r }));
    const place = places()[at];
    if (!place) return;
    const text = read(input.value, schema(), unit());
    const i = rowAt(placed(), place, turn);
    const row = i < 0 ? { [where]: oclock(place.hour), ...(turn > 0 && turnName !== undefined ? { [turnName]: `${Math.round((turn * 180) / Math.PI)}°` } : {}) } : all[i] ?? {};
    if (text === '') delete row[value];
    else row[value] = text;
    if (i < 0) all.push(row);
    put(all);
    draw();
  }

  /** On to the next place without a reading, or the next one. */
  function next() {
    const all = places();
    const order = all.map((_, k) => (at + 1 + k) % all.length);
    at = order.find((k) => reading(all[k]) === '') ?? order[0] ?? 0;
    choose(at);
  }

  /** What was read at a place. @param {Place | undefined} place */
  function reading(place) {
    const row = place && shown()[rowAt(placed(), place, turn)];
    const text = row?.[value];
    return text === undefined ? '' : String(text).replace(new RegExp(`\\s*${unit()}$`), '');
  }

  /** @param {number} k */
  function choose(k) {
    at = k;
    draw();
    input.value = reading(places()[at]);
    input.focus({ preventScroll: true });
    input.select();
  }

  function draw() {
    const all = places();
    const name = schema().title ?? value;
    at = Math.min(at, all.length - 1);
    spots.replaceChildren(
      ...all.map((place, k) => {
        const text = reading(place);
        const [hour, clock = ''] = oclock(place.hour).split(' ');
        const spot = button('', () => choose(k), { class: text === '' ? 'spot' : 'spot read', 'aria-pressed': String(k === at) });
        spot.append(
          h('small', {}, heard(`${name} at ${place.again ? '12 ' : ''}`), place.again ? 'again' : hour, heard(` ${clock}: `)),
          h('span', {}, text === '' ? h('span', { 'aria-hidden': 'true' }, '+') : text.replace(new RegExp(`\\s*(${unit()})?\\s*±.*$`), ''), heard(text === '' ? 'not read' : ` ${unit()}`)),
        );
        const angle = ((place.again ? 0.75 : place.hour) * Math.PI) / 6;
        spot.style.left = `${50 + 41 * Math.sin(angle)}%`; // per cent of the face
        spot.style.top = `${50 - 41 * Math.cos(angle)}%`;
        return spot;
      }),
    );
    ring.replaceChildren(...outline(all.filter((p) => !p.again).map((p) => ({ hour: p.hour, x: si(shown()[rowAt(placed(), p, turn)]?.[value], value) }))));
    const place = all[at];
    label.textContent = `${name}, ${place ? oclock(place.hour) : ''}${place?.again ? ' again' : ''}, ${unit()}`;
    input.inputMode = unit() === 'in' || signed() ? 'text' : 'decimal';
    sign.hidden = !signed();
    made.classList.toggle('given', !typed() && given() !== undefined);
    modes.replaceChildren(
      ...(values.length > 1 ? values.map(([n, v]) => mode(v.title ?? n, n === value, () => (value = n))) : []),
      ...(!typed() && given() ? [button('Read anew', () => (put(fresh()), choose(0)), { class: 'quiet' })] : []),
      pick('Places', [4, 8].map((n) => [n, `${n} places`]), count, (n) => (count = n)),
      ...(turnName === undefined ? [] : [pick(parts[turnName]?.title ?? turnName, [0, 90, 180, 270].map((d) => [d, d === 0 ? 'Shaft as found' : `Turned ${d}°`]), Math.round((turn * 180) / Math.PI), (d) => (turn = (d * Math.PI) / 180))]),
    );
  }

  /**
   * @param {string} title
   * @param {[number, string][]} all
   * @param {number} now
   * @param {(n: number) => void} set
   */
  function pick(title, all, now, set) {
    const made = h('select', { 'aria-label': title }, ...all.map(([n, words]) => h('option', { value: n, selected: n === now }, words)));
    made.addEventListener('change', () => change(made, () => set(Number(made.value))));
    return made;
  }

  /**
   * Shows another side of the readings; the control that asked for it keeps the
   * focus.
   * @param {HTMLElement} control
   * @param {() => void} set
   */
  function change(control, set) {
    const k = [...modes.children].indexOf(control);
    set();
    draw();
    input.value = reading(places()[at]);
    const now = modes.children[k];
    if (now instanceof HTMLElement) now.focus();
  }

  /**
   * @param {string} words
   * @param {boolean} on
   * @param {() => void} set
   */
  function mode(words, on, set) {
    const made = button(words, () => change(made, set), { class: 'quiet', 'aria-pressed': String(on) });
    return made;
  }

  draw();
  input.value = reading(places()[at]);
  return { element: made, draw: () => (draw(), document.activeElement !== input && (input.value = reading(places()[at]))) };
}

/** What a screen reader says besides. @param {string} words */
function heard(words) {
  return h('span', { class: 'unseen' }, words);
}

/**
 * The two faces seen along the shaft: the farther out the band bulges, the
 * more is read there.
 * @param {{ hour: number, x: number | undefined }[]} readings
 */
function outline(readings) {
  const known = readings.flatMap(({ hour, x }) => (x === undefined ? [] : [{ hour, x }]));
  const most = Math.max(...known.map(({ x }) => Math.abs(x)), 0);
  const least = Math.min(0, ...known.map(({ x }) => x));
  const span = most - least || 1;
  const points = known.map(({ hour, x }) => {
    const r = 118 + (24 * (x - least)) / span;
    return `${(r * Math.sin((hour * Math.PI) / 6)).toFixed(1)} ${(-r * Math.cos((hour * Math.PI) / 6)).toFixed(1)}`;
  });
  return [
    points.length > 2 && s('path', { class: 'bulge', d: `M${points.join('L')}Z` }),
    s('circle', { class: 'rim', r: 118 }),
  ].filter((e) => e instanceof SVGElement);
}
