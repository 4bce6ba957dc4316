// A counter of drips: a tap for each, and the rate. How far a count of so many
// can be trusted, and what is usual, the calculator says.

import { aside } from '../kit/asking.js';
import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { forget, keep, recall } from '../store/keep.js';
import { units } from '../store/settings.js';
import { inHand, toSend } from '../store/shelf.js';
import { verdictLine } from './answer.js';

const LEAST = 3; // taps before a rate is told
const GLAND = 'gland-heat'; // has the limits that drips are held against
const GOOD = 60; // s: a slow gland wants a whole minute

/** Rows of the gauges, by how long they count at least; the calculator has what a count leaves unknown. */
const COUNTS = /** @type {const} */ ([[300, 'drip-count-long'], [60, 'drip-count'], [0, 'drip-count-short']]);

/**
 * The gauge that a count of so many seconds is, rather a shorter one.
 * @param {number} seconds
 */
export function gaugeOf(seconds) {
  return COUNTS.find(([least]) => seconds >= least)?.[1] ?? COUNTS[2][1];
}

/**
 * @param {import('../app.js').App} app
 * @param {import('../form/field.js').Field[]} fields that it fills one of: with the shaft turning, or at rest
 * @param {import('../form/field.js').Field} [gauge] by which that was read
 */
export function dripCounter(app, fields, gauge) {
  const which = h('select', { 'aria-label': 'Which drips' }, ...fields.map((f) => h('option', {}, f.title)));
  which.addEventListener('change', () => void show());
  const field = () => /** @type {import('../form/field.js').Field} */ (fields[which.selectedIndex]);
  const tapped = (/** @type {import('../form/field.js').Field} */ f) => `tapped.${inHand().id}${f.pointer}`;
  for (const f of fields) {
    f.control.addEventListener('input', ({ isTrusted }) => {
      if (!isTrusted || !recall(tapped(f))) return;
      forget(tapped(f)); // what is typed over a count was not counted so
      gauge?.enter('');
    });
  }
  /** @type {number[]} */
  let taps = [];
  const said = h('p', { class: 'drip-rate' }, 'Tap at every drip.');
  const verdict = h('div', { class: 'sheet' });
  const drop = button('Drip', tap, { class: 'drop' });
  const use = button('Use it', () => {
    gauge?.enter(gaugeOf(counted().seconds));
    keep(tapped(field()), true);
    field().fill(written(counted().rate));
    made.open = false; // the sheet says the rest
    made.querySelector('summary')?.focus();
    speak(`${field().title}: ${field().control.value}`);
  });
  const again = button('Count again', () => {
    taps = [];
    void show();
  }, { class: 'quiet' });
  const tools = h('div', { class: 'tools' }, use, again);

  const counted = () => {
    const seconds = Math.max(0.001, ((taps.at(-1) ?? 0) - (taps[0] ?? 0)) / 1000);
    return { seconds, rate: (60 * (taps.length - 1)) / seconds };
  };

  /** @param {Event} event, which knows its time also where the page was busy */
  function tap(event) {
    taps.push(event.timeStamp);
    drop.classList.remove('tapped');
    void drop.offsetWidth; // the flash begins anew
    drop.classList.add('tapped');
    void show();
  }

  async function show() {
    tools.hidden = taps.length <= LEAST;
    if (taps.length <= LEAST) {
      said.textContent = taps.length === 0 ? 'Tap at every drip.' : `${taps.length}: go on.`;
      verdict.replaceChildren();
      return;
    }
    const { seconds, rate } = counted();
    const name = field().pointer.slice(1);
    const now = taps.length;
    const tell = (/** @type {string | undefined} */ range) =>
      said.replaceChildren(
        h('strong', {}, `${round(rate)} drips/min`),
        `${range ? ` likely ${range}` : ''}. ${now - 1} drips in ${Math.round(seconds)} s${seconds < GOOD ? ': a whole minute tells more' : ''}.`,
      );
    tell(undefined);
    const sheet = await aside(runWith(GLAND, { [name]: written(rate), dripGauge: gaugeOf(seconds) }), app.ask);
    if (taps.length !== now || field().pointer.slice(1) !== name) return; // tapped on since
    tell(sheet?.inputs.find((i) => i.name === name)?.range);
    verdict.replaceChildren(...verdictsOn(sheet, [name]).map(verdictLine));
  }

  const made = h('details', { class: 'fold counter' }, h('summary', {}, 'Count the drips by taps'), fields.length > 1 && which, drop, said, tools, verdict);
  void show();
  return made;
}

/**
 * @param {import('../../wasm/marinecalc.js').Sheet | undefined} sheet
 * @param {string[]} names of inputs and results
 */
function verdictsOn(sheet, names) {
  return (sheet?.verdicts ?? []).filter((v) => names.includes(v.on) && v.word !== 'not measured');
}

/**
 * The sheet of another calculation with what is known here. What it asks for
 * besides is taken from its schema's examples: good for results alone that do
 * not go by that. It yields what is to be asked.
 * @param {string} calculation
 * @param {import('../../wasm/marinecalc.js').Json} input
 * @returns {Generator<import('../../wasm/marinecalc.js').Request, import('../../wasm/marinecalc.js').Sheet | undefined, any>}
 */
export function* runWith(calculation, input) {
  const boat = toSend(inHand().boat);
  const blank = yield { ask: 'blank', calculation, boat, units: units() };
  if (!blank.ok) return undefined;
  const { needs = [], properties = {} } = blank.schema.$defs.input;
  const known = blank.given ?? {};
  const all = { ...input };
  const run = () => /** @type {const} */ ({ ask: 'run', calculation, input: all, boat, units: units() });
  let reply = yield run();
  if (!reply.ok) {
    const wrong = reply.problems.map((/** @type {{ where: string }} */ p) => p.where);
    for (const name of needs) {
      const example = properties[name]?.examples?.[0];
      if (all[name] === undefined && known[name] === undefined && example !== undefined && wrong.includes(`/${name}`)) all[name] = example;
    }
    reply = yield run();
  }
  return reply.ok ? reply.sheet : undefined;
}

/** As it goes into a field. @param {number} rate */
function written(rate) {
  return `${round(rate)} drips/min`;
}

/** Two figures. @param {number} x */
function round(x) {
  return x >= 10 ? Math.round(x) : Number(x.toPrecision(2));
}
