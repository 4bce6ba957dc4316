// Where the readings of a series lead: told where they are looked at, where one
// more was logged, and on home where they come to their limit, so that none grows unseen.

import { today } from '../kit/dates.js';
import { bound, h } from '../kit/dom.js';
import { keep, recall } from '../store/keep.js';
import { marksKey } from '../store/marks.js';
import { units } from '../store/settings.js';
import { readingsOf } from './asks.js';

const FEWEST = 3; // readings that a trend takes

/** What no part's state is: how it was around, and how a thing was read. */
const AROUND = ['engineHours', 'waterTemperature', 'airTemperature', 'engineSpeed', 'vibrationFrequency', 'standingTime', 'sampleVolume', 'fluidHours'];

/** How the sheet begins where no limit is given and nothing grew. */
const NOTHING = 'No limit was given';

/** What is told on home: those that come to their limit within so many seconds, at the earliest. A year: what is looked after in a season. */
const AHEAD = 366 * 86_400;

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ reading: string, title: string }} Series */
/** @typedef {Series & { when: string }} Lead when: how it stands to its limit */

/**
 * Whether a series may lead somewhere.
 * @param {{ reading: string, readings: number }} series
 */
const mayLead = ({ reading, readings }) => readings >= FEWEST && !AROUND.includes(reading) && !reading.includes('°');

/**
 * @param {Json} boat
 * @param {string} reading
 * @returns {import('../../wasm/marinecalc.js').RunRequest}
 */
const trendOf = (boat, reading) => ({ ask: 'run', calculation: 'reading-trend', input: { reading }, boat, units: units(), date: today(), noRanges: true });

/** @param {Json} boat @param {string} build */
const keyOf = (boat, build) => marksKey([boat, today()], units(), build);

/**
 * Those found before, where nothing has changed; undefined where that is not known.
 * @param {Json} boat
 * @param {string} build
 * @returns {Lead[] | undefined}
 */
export function keptLeads(boat, build) {
  const kept = /** @type {any} */ (recall('leads'));
  return kept?.key === keyOf(boat, build) ? kept.leads : undefined;
}

/**
 * The series that come to their limit or are past it, one asked after the other
 * while it is still wanted; undefined where it is not any more.
 * @param {import('../app.js').App} app
 * @param {Json} boat
 * @param {() => boolean} wanted
 * @returns {Promise<Lead[] | undefined>}
 */
export async function leadsOf(app, boat, wanted) {
  const log = await app.aside(readingsOf(boat));
  /** @type {(Lead & { left: number })[]} */
  const leads = [];
  for (const { reading, title } of (log.ok ? log.charts ?? [] : []).filter(mayLead)) {
    if (!wanted()) return undefined;
    const reply = await app.aside(trendOf(boat, reading));
    const found = (/** @type {string} */ name) => (reply.ok ? reply.sheet.results.find((r) => r.name === name) : undefined);
    const outlook = found('outlook')?.word ?? '';
    const left = found('earliestLeft')?.si ?? Infinity;
    if (outlook === 'reached' || outlook === 'past') leads.push({ reading, title, when: outlook === 'past' ? 'past its limit' : 'at its limit', left: 0 });
    else if (outlook === 'toward' && left <= AHEAD) leads.push({ reading, title, when: `at its limit about ${found('limitDate')?.text}`, left });
  }
  const sorted = leads.sort((a, b) => a.left - b.left).map(({ left: _, ...lead }) => lead);
  keep('leads', { key: keyOf(boat, app.build), leads: sorted });
  return sorted;
}

/**
 * Puts it into a place once it is found; nothing where the readings are too
 * few, stand still with no limit, or are of places round a face, which has its sheet.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Json} boat
 * @param {{ reading: string, title: string, readings: number }} series
 * @param {HTMLElement} place
 */
export function tellLead(app, boat, { reading, title, readings }, place) {
  if (!mayLead({ reading, readings })) return;
  void app.aside(trendOf(boat, reading)).then((reply) => {
    if (!reply.ok || !place.isConnected) return;
    const { sheet } = reply;
    const text = (/** @type {string} */ name) => sheet.results.find((r) => r.name === name)?.text;
    const [says = '', pace] = [text('says'), text('pace')];
    if (says === '' || says.startsWith(NOTHING)) return;
    place.append(h('p', { 'data-lead': reading }, h('strong', {}, `${title}. `), bound(`${says}${pace ? ` Pace: ${pace}.` : ''}`)));
  });
}
