// The circle of bolts: in which order, at which torque each pass, ticked off
// bolt by bolt.

import { aside, here } from '../kit/asking.js';
import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { keep, recall } from '../store/keep.js';
import { makerOf } from './answer.js';
import { runWith } from './drips.js';

/** @typedef {{ order: number[], passes: string[] }} Passes */

/**
 * Where one stands after so many touches: the last round at the full torque
 * goes round the circle.
 * @param {Passes} of
 * @param {number} done
 */
export function standOf({ order, passes }, done) {
  const rounds = passes.length + 1;
  const round = Math.min(Math.floor(done / order.length), rounds);
  const last = round === rounds - 1;
  const now = last ? [...order].sort((a, b) => a - b) : order;
  return { round, rounds, over: round === rounds, torque: passes[Math.min(round, passes.length - 1)] ?? '', bolt: now[done % order.length] ?? 0, last };
}

/**
 * Order and torques for a sheet that has the wrench setting: from it where it
 * has them all, else as the fit of the bolts has them. It yields what is to be asked.
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @returns {Generator<import('../../wasm/marinecalc.js').Request, Passes | null, any>}
 */
export function* passesOf(sheet) {
  const full = sheet.results.find((r) => r.name === 'wrenchSetting') ?? sheet.inputs.find((i) => i.name === 'wrenchSetting');
  if (!full || full.unsettled) return null;
  const makers = 'maker' in full ? makerOf(full) : undefined;
  const own = sheet.results.some((r) => r.name === 'tighteningOrder');
  const fit = own ? sheet : yield* runWith('bolt-fit', { wrenchSetting: `${makers?.si ?? full.si} N·m` });
  if (!fit || (!own && fit.inputs.find((i) => i.name === 'boltCount')?.origin !== 'boat')) return null; // of no number of bolts that nobody counted
  const result = (/** @type {string} */ name) => fit.results.find((r) => r.name === name);
  const order = result('tighteningOrder')?.sequence ?? [];
  const passes = [result('firstTorque')?.text ?? '', result('secondTorque')?.text ?? '', makers?.text ?? full.text].filter(Boolean);
  return order.length > 1 && passes.length === 3 ? { order, passes } : null;
}

let circled = false; // whether the last sheet had a circle

/**
 * The circle of a sheet, or the room for it until it is known.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @param {string} place whose bolts they are
 * @returns {HTMLElement[]}
 */
export function circleOf(app, sheet, place) {
  const made = (/** @type {Passes | null} */ of) => {
    circled = of !== null;
    return of ? [boltCircle(of, place)] : [];
  };
  if (!app.free()) return made(here(passesOf(sheet), app.calculator.call));
  const room = h('div', { class: circled && 'passes-room' });
  void aside(passesOf(sheet), app.aside).then((of) => room.replaceWith(...made(of)));
  return [room];
}

/**
 * @param {Passes} of
 * @param {string} place whose bolts they are
 */
export function boltCircle(of, place) {
  const { order, passes } = of;
  const key = `bolts.${place}`;
  const kept = /** @type {any} */ (recall(key));
  const plan = `${order}/${passes}`;
  let done = kept?.plan === plan && Number.isInteger(kept.done) ? Number(kept.done) : 0;
  const circle = h('div', { class: 'bolts' });
  const said = h('p', { class: 'then', role: 'status' });
  const set = (/** @type {number} */ to) => {
    done = Math.max(0, Math.min(to, order.length * (passes.length + 1)));
    keep(key, { plan, done });
    draw();
    speak(said.textContent ?? '');
  };
  const go = button('', () => set(done + 1), { class: 'go' });
  const back = button('One back', () => set(done - 1), { class: 'quiet' });
  const anew = button('From the start', () => set(0), { class: 'quiet' });
  const draw = () => {
    const { round, rounds, over, torque, bolt, last } = standOf(of, done);
    const seq = last ? [...order].sort((a, b) => a - b) : order;
    const ticked = new Set(over ? seq : seq.slice(0, done % order.length));
    said.textContent = over ? 'All passes done. Paint a line across nut and flange.' : `Pass ${round + 1} of ${rounds}${last ? ', once round' : ''}: ${torque}. Next: bolt ${bolt}.`;
    go.textContent = over ? 'Done' : `Bolt ${bolt} at ${torque}: done`;
    go.disabled = over;
    back.disabled = done === 0;
    circle.replaceChildren(
      ...order.map((_, k) => {
        const n = k + 1;
        const place = h('span', { class: ticked.has(n) ? 'bolt done' : n === bolt && !over ? 'bolt now' : 'bolt' }, ticked.has(n) ? '✓' : '', String(n));
        const angle = (2 * Math.PI * k) / order.length;
        place.style.left = `${50 + 38 * Math.sin(angle)}%`;
        place.style.top = `${50 - 38 * Math.cos(angle)}%`;
        return place;
      }),
      h('strong', {}, over ? '✓' : torque),
    );
    circle.setAttribute('aria-label', `${order.length} bolts round the circle, order ${order.join(', ')}. ${ticked.size} done in this pass.`);
  };
  circle.setAttribute('role', 'img');
  draw();
  return h('section', { class: 'passes' }, h('h3', {}, `Tighten in this order: ${order.join(' - ')}`), circle, said, h('div', { class: 'tools' }, go, back, anew));
}
