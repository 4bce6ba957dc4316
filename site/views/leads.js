// Where the readings of a series lead: told where they are looked at and where
// one more was logged, so that none grows unseen.

import { today } from '../kit/dates.js';
import { bound, h } from '../kit/dom.js';
import { units } from '../store/settings.js';

const FEWEST = 3; // readings that a trend takes

/** What no part's state is: how it was around, and how a thing was read. */
const AROUND = ['engineHours', 'waterTemperature', 'airTemperature', 'engineSpeed', 'vibrationFrequency', 'standingTime', 'sampleVolume', 'fluidHours'];

/** How the sheet begins where no limit is given and nothing grew. */
const NOTHING = 'No limit was given';

/**
 * Puts it into a place once it is found; nothing where the readings are too
 * few, stand still with no limit, or are of places round a face, which has its sheet.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Json} boat
 * @param {{ reading: string, title: string, readings: number }} series
 * @param {HTMLElement} place
 */
export function tellLead(app, boat, { reading, title, readings }, place) {
  if (readings < FEWEST || AROUND.includes(reading) || reading.includes('°')) return;
  void app.aside({ ask: 'run', calculation: 'reading-trend', input: { reading }, boat, units: units(), date: today(), noRanges: true }).then((reply) => {
    if (!reply.ok || !place.isConnected) return;
    const { sheet } = reply;
    const text = (/** @type {string} */ name) => sheet.results.find((r) => r.name === name)?.text;
    const [says = '', pace] = [text('says'), text('pace')];
    if (says === '' || says.startsWith(NOTHING)) return;
    place.append(h('p', { 'data-lead': reading }, h('strong', {}, `${title}. `), bound(`${says}${pace ? ` Pace: ${pace}.` : ''}`)));
  });
}
