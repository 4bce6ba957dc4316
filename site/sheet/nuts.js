// How to move it: the engine from above, at each mount its nut, which way it
// turns and how far, to be ticked off one after the other; then the gaps are
// typed again, and what is left is planned anew.

import { button, h, s } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { keep, recall } from '../store/keep.js';
import { cells } from './cells.js';
import { reread as again } from './reread.js';

/** @typedef {import('../../wasm/marinecalc.js').Table} Table */

/** How the first pair is moved, beside every figure for it. */
const HALF_FIRST = 'First pair: half of it, then read. The rest only if the gap went half of its way.';

/** Half of the least that a nut is turned. */
const EIGHTH = 'an eighth of a flat, or leave it';

const QUARTER_FLAT = Math.PI / 12;

/** Whether a nut turns by a quarter of a flat alone, of which nobody turns half by eye. @param {number} [turns] in radians */
const isLeast = (turns = 0) => Math.round(Math.abs(turns) / QUARTER_FLAT) === 1;

/**
 * The mounts in rows from forward aft, in each from port to starboard.
 * @param {{ forward: number, starboard: number }[]} mounts
 * @returns {number[][]}
 */
export function mountRows(mounts) {
  const order = mounts.map((_, i) => i).sort((a, b) => (mounts[b]?.forward ?? 0) - (mounts[a]?.forward ?? 0));
  const reach = Math.max(...mounts.map((m) => m.forward)) - Math.min(...mounts.map((m) => m.forward));
  /** @type {number[][]} */
  const rows = [];
  for (const i of order) {
    const first = rows.at(-1)?.[0];
    const near = first !== undefined && Math.abs((mounts[first]?.forward ?? 0) - (mounts[i]?.forward ?? 0)) <= 0.2 * reach;
    if (near) rows.at(-1)?.push(i);
    else rows.push([i]);
  }
  return rows.map((row) => row.sort((a, b) => (mounts[a]?.starboard ?? 0) - (mounts[b]?.starboard ?? 0)));
}

/** The same for a list of moves on paper; empty for other lists, and where nothing is moved. @param {Table} table */
export function halfFirst(table) {
  const cell = cells(table);
  const moved = table.rows.filter((row) => cell(row, 'nut') && cell(row, 'raise')?.si);
  const least = moved.some((row) => isLeast(cell(row, 'turns')?.si));
  return moved.length > 0 ? `${HALF_FIRST}${least ? ` Half of ¼ flat: ${EIGHTH}.` : ''}` : '';
}

/** What the feeler finds once a nut is turned. @param {{ text: string, si?: number }} gap at the top less that at the bottom */
function gapsThen({ text, si = 0 }) {
  if (si === 0) return 'Then the gaps at top and bottom are the same.';
  const by = text.replace(/^[-−]/, '');
  return si > 0 ? `Then the gap is ${by} wider at the top.` : `Then the gap is ${by} wider at the bottom.`;
}

/**
 * @param {import('../app.js').App} app
 * @param {Table} table
 * @param {unknown} mounts as typed or in the boat
 * @param {import('../form/form.js').Form} form
 * @param {string} place the boat
 */
export function nutsFromAbove(app, table, mounts, form, place) {
  const cell = cells(table);
  const length = { quantity: 'length' };
  const at = table.rows.map((_, i) => {
    const m = /** @type {any} */ (Array.isArray(mounts) ? mounts[i] : undefined) ?? {};
    return { forward: app.read.si(m.forward, length) ?? -i, starboard: app.read.si(m.starboard, length) ?? 0 };
  });
  const plan = table.rows.map((row) => ['name', 'nut', 'shift'].map((c) => cell(row, c)?.text).join()).join(';');
  const key = `turned.${place}`;
  const kept = /** @type {any} */ (recall(key));
  const done = new Set(kept?.plan === plan && Array.isArray(kept.done) ? kept.done : []);
  /** What is done at a mount: turns of its nut, or how far it goes where no pitch is known. @param {Table['rows'][0]} row */
  const turn = (row) => {
    const raise = cell(row, 'raise');
    return cell(row, 'nut')?.text || (raise?.si ? `${raise.text.replace('-', '')} ${raise.si > 0 ? 'up' : 'down'}, pitch not given` : 'leave');
  };
  const shifts = (/** @type {Table['rows'][0]} */ row) => Math.abs(cell(row, 'shift')?.si ?? 0) >= 5e-6;
  const moved = table.rows.findIndex((row) => cell(row, 'raise')?.si);
  const firstPair = mountRows(at).find((row) => row.includes(moved)) ?? [];
  const grid = h('div', { class: 'mounts' });
  const next = h('p', { class: 'then', role: 'status' });
  const draw = () => {
    const todo = table.rows.findIndex((_, i) => !done.has(i));
    const now = table.rows[todo];
    const move = now && turn(now);
    const then = cell(now, 'gapThen');
    next.textContent = moved < 0
      ? `No nut is to be turned${table.rows.some(shifts) ? '; sideways as at each mount' : ''}. Hold what was read against its limits.`
      : !now
      ? 'All turned. Read the coupling again and type what it reads.'
      : `Next: ${cell(now, 'name')?.text}, ${move}.${firstPair.includes(todo) && cell(now, 'raise')?.si ? ` ${isLeast(cell(now, 'turns')?.si) ? `First pair: first ${EIGHTH}; then read.` : HALF_FIRST}` : ''}${then?.text ? ` ${gapsThen(then)}` : ''}`;
    grid.replaceChildren(
      h('p', { class: 'bow' }, '▲ forward'),
      ...mountRows(at).map((row) => h('div', { class: 'mount-row' }, ...row.map((i) => nut(i, i === todo)))),
      h('p', { class: 'bow' }, 'coupling, shaft'),
    );
  };
  /**
   * @param {number} i
   * @param {boolean} now
   */
  const nut = (i, now) => {
    const row = table.rows[i];
    const name = cell(row, 'name')?.text ?? '';
    const words = row ? turn(row) : '';
    const shift = cell(row, 'shift');
    const aside = row && shifts(row) && shift?.si ? `${shift.text.replace('-', '')} to ${shift.si > 0 ? 'starboard' : 'port'}` : '';
    const stop = cell(row, 'stop')?.text ?? '';
    const made = button('', () => {
      if (done.has(i)) done.delete(i);
      else done.add(i);
      keep(key, { plan, done: [...done], half: halfDone() });
      draw();
      for (const told of reread.querySelectorAll('.wrong')) told.textContent = '';
      speak(next.textContent ?? '');
      const again = grid.querySelector(`[data-mount="${i}"]`);
      if (again instanceof HTMLElement) again.focus();
    }, { class: now ? 'nut now' : 'nut', 'data-mount': i, 'aria-pressed': String(done.has(i)) });
    const turns = cell(row, 'turns')?.si ?? 0;
    made.append(turning(turns, done.has(i)), h('strong', {}, words), h('span', {}, name));
    if (firstPair.includes(i) && cell(row, 'raise')?.si) made.append(h('strong', {}, isLeast(turns) ? `first ${EIGHTH}` : 'half first, then read'));
    if (turns) made.append(h('span', {}, turns > 0 ? 'anticlockwise' : 'clockwise'));
    if (aside) made.append(h('span', {}, shift && (shift.si ?? 0) > 0 ? `${aside} →` : `← ${aside}`));
    if (stop) made.append(h('small', {}, `to stand at ${stop}`));
    return made;
  };
  /** The mounts of those that are moved, done or not. @param {number[]} of @param {boolean} made */
  const named = (of, made) => of.filter((i) => cell(table.rows[i], 'raise')?.si && done.has(i) === made).map((i) => cell(table.rows[i], 'name')?.text).join(', ');
  /** What stands in the way of any new plan: of a pair one nut was turned and the other was not. */
  const halfDone = () => {
    for (const row of mountRows(at)) {
      if (named(row, true) && named(row, false)) return `Turned: ${named(row, true)}. Not turned: ${named(row, false)}. The engine stands twisted on its mounts, and a new plan would leave it so. Turn the rest of the pair first, or turn back what was turned; touch it here, read again, and plan then.`;
    }
    return '';
  };
  /** What stands in the way of one from the gap alone: what was turned has moved the flange too. @param {boolean} offset whether that is read */
  const begun = (offset) => {
    const all = [...table.rows.keys()];
    const [turned, left] = [named(all, true), named(all, false)];
    return turned && left && !offset ? `Turned: ${turned}. Not turned: ${left}. What was turned has moved the flange up or down as well, and a plan from the gap alone would leave it there. Finish this plan first, or read how high the engine flange stands and type that too.` : '';
  };
  const reread = again(app, form, (offset) => halfDone() || begun(offset), () => (anew = true));
  draw();
  const made = h(
    'section',
    { class: 'move-it', tabindex: '-1' },
    h('h3', {}, 'How to move it'),
    h('p', { class: 'help' }, "From above, right-hand threads: the nut under the foot turned anticlockwise lifts it. The two of a pair by turns; half of the first pair's move, and a reading, before the rest; up and down first, sideways after. Touch a mount once it is done."),
    kept?.plan !== plan && kept?.half && h('p', { class: 'wrong' }, kept.half),
    grid,
    next,
    reread,
  );
  if (anew) setTimeout(() => (made.scrollIntoView(), made.focus({ preventScroll: true })));
  anew = false;
  return made;
}

let anew = false; // the moves were asked for from what was read after some of them

/**
 * A nut from above with an arrow that goes round as far as it turns, up to a
 * whole turn; up has a wedge that points up, down one that points down.
 * @param {number} turn in radians, up is plus
 * @param {boolean} done
 */
function turning(turn, done) {
  const angle = Math.min(Math.abs(turn), 1.94 * Math.PI);
  const sign = turn > 0 ? -1 : 1; // anticlockwise lifts
  const point = (/** @type {number} */ r, /** @type {number} */ a) => `${(r * Math.sin(sign * a)).toFixed(1)} ${(-r * Math.cos(sign * a)).toFixed(1)}`;
  const hexagon = Array.from({ length: 6 }, (_, i) => point(21, (i * Math.PI) / 3)).join('L');
  return s(
    'svg',
    { viewBox: '-32 -32 64 64', 'aria-hidden': 'true' },
    s('path', { class: 'hexagon', d: `M${hexagon}Z` }),
    angle > 0 && s('path', { class: 'sweep', d: `M${point(27, 0)}A27 27 0 ${angle > Math.PI ? 1 : 0} ${sign > 0 ? 1 : 0} ${point(27, angle)}` }),
    angle > 0 && s('path', { class: 'tip', d: `M${point(22, angle)}L${point(32, angle)}L${point(27, angle + 0.35)}Z` }),
    s('path', { class: 'way', d: done ? 'M-9 0L-2 8L10 -8' : turn > 0 ? 'M0 -10L10 8H-10Z' : turn < 0 ? 'M0 10L10 -8H-10Z' : 'M-9 0H9' }),
  );
}
