// A counter of drips: a tap for each, and the rate with how far a count of so
// many can be trusted. With the rate alone it says what is usual.

import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { units } from '../store/settings.js';
import { inHand, toSend } from '../store/shelf.js';
import { verdictLine } from './answer.js';

/** @typedef {import('../../wasm/marinecalc.js').Verdict} Verdict */

const LEAST = 3; // taps before a rate is told
const GOOD = 60; // s: a slow gland wants a whole minute

/**
 * The rate between the first tap and the last, and where it may really lie
 * with 95 % (exact limits of a Poisson count by Wilson and Hilferty's cube).
 * @param {number} count of drips after the first one
 * @param {number} seconds
 */
export function rateOf(count, seconds) {
  const bound = (/** @type {number} */ n, /** @type {number} */ z) => (n > 0 ? n * (1 - 1 / (9 * n) + z / (3 * Math.sqrt(n))) ** 3 : 0);
  const perMinute = 60 / seconds;
  return { rate: count * perMinute, low: bound(count, -1.96) * perMinute, high: bound(count + 1, 1.96) * perMinute };
}

/**
 * @param {import('../app.js').App} app
 * @param {import('../form/field.js').Field} field that it fills
 */
export function dripCounter(app, field) {
  /** @type {number[]} */
  let taps = [];
  const said = h('p', { class: 'drip-rate' }, 'Tap at every drip.');
  const verdict = h('div', { class: 'sheet' });
  const drop = button('Drip', tap, { class: 'drop' });
  const use = button('Use it', () => {
    field.fill(written(now()));
    speak(`${field.title}: ${field.control.value}`);
  });
  const again = button('Count again', () => {
    taps = [];
    show();
  }, { class: 'quiet' });
  const tools = h('div', { class: 'tools' }, use, again);

  const now = () => rateOf(taps.length - 1, Math.max(0.001, ((taps.at(-1) ?? 0) - (taps[0] ?? 0)) / 1000));

  function tap() {
    taps.push(performance.now());
    drop.classList.remove('tapped');
    void drop.offsetWidth; // the flash begins anew
    drop.classList.add('tapped');
    show();
  }

  function show() {
    tools.hidden = taps.length <= LEAST;
    if (taps.length <= LEAST) {
      said.textContent = taps.length === 0 ? 'Tap at every drip.' : `${taps.length}: go on.`;
      verdict.replaceChildren();
      return;
    }
    const { rate, low, high } = now();
    const seconds = ((taps.at(-1) ?? 0) - (taps[0] ?? 0)) / 1000;
    said.replaceChildren(
      h('strong', {}, `${round(rate)} drips/min`),
      ` likely ${round(low)} to ${round(high)}. ${taps.length - 1} drips in ${Math.round(seconds)} s${seconds < GOOD ? ': a whole minute tells more' : ''}.`,
    );
    verdict.replaceChildren(...usual(app, written({ rate, low, high })).map(verdictLine));
  }

  const made = h('details', { class: 'fold counter' }, h('summary', {}, 'Count the drips by taps'), said, drop, tools, verdict);
  show();
  return made;
}

/**
 * How a rate alone stands to what is usual: only limits that go by the rate
 * itself. What else the sheet asks for is taken from the schema's examples and
 * moves none of them.
 * @param {import('../app.js').App} app
 * @param {string} rate
 * @returns {Verdict[]}
 */
export function usual(app, rate) {
  return (runWith(app, 'gland-heat', { dripRate: rate })?.verdicts ?? []).filter((v) => v.on === 'dripRate');
}

/**
 * The sheet of another calculation with what is known here. What it asks for
 * besides is taken from its schema's examples: good for results alone that do
 * not go by that.
 * @param {import('../app.js').App} app
 * @param {string} calculation
 * @param {import('../../wasm/marinecalc.js').Json} input
 */
export function runWith(app, calculation, input) {
  const boat = toSend(inHand().boat);
  const blank = app.calculator.call({ ask: 'blank', calculation, boat, units: units() });
  if (!blank.ok) return undefined;
  const { needs = [], properties = {} } = blank.schema.$defs.input;
  const known = blank.given ?? {};
  const all = { ...input };
  const run = () => app.calculator.call({ ask: 'run', calculation, input: all, boat, units: units() });
  let reply = run();
  if (!reply.ok) {
    const wrong = reply.problems.map((p) => p.where);
    for (const name of needs) {
      const example = properties[name]?.examples?.[0];
      if (all[name] === undefined && known[name] === undefined && example !== undefined && wrong.includes(`/${name}`)) all[name] = example;
    }
    reply = run();
  }
  return reply.ok ? reply.sheet : undefined;
}

/** As it goes into a field. @param {{ rate: number, low: number, high: number }} counted */
function written({ rate, low, high }) {
  return `${round(rate)} ± ${round(Math.min(rate, (high - low) / 2))} drips/min`;
}

/** Two figures. @param {number} x */
function round(x) {
  return x >= 10 ? Math.round(x) : Number(x.toPrecision(2));
}
