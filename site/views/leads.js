// Where the readings of a series lead: told where they are looked at and where
// one more was logged, so that none grows unseen.

import { today } from '../kit/dates.js';
import { bound, h } from '../kit/dom.js';
import { leadVerdict } from '../sheet/answer.js';
import { badge, isPast } from '../sheet/verdicts.js';
import { units } from '../store/settings.js';

const FEWEST = 3; // readings that a trend takes

/**
 * Puts it into a place once it is found; nothing where the readings are too few.
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Json} boat
 * @param {{ reading: string, title: string, readings: number }} series
 * @param {HTMLElement} place
 */
export function tellLead(app, boat, { reading, title, readings }, place) {
  if (readings < FEWEST) return;
  void app.aside({ ask: 'run', calculation: 'reading-trend', input: { reading }, boat, units: units(), date: today(), noRanges: true }).then((reply) => {
    if (!reply.ok || !place.isConnected) return;
    const { sheet } = reply;
    const text = (/** @type {string} */ name) => sheet.results.find((r) => r.name === name)?.text;
    const lead = leadVerdict(sheet);
    const pace = text('pace');
    place.append(
      h(
        'p',
        { class: 'lead-of', 'data-lead': reading },
        h('strong', {}, `${title}. `),
        lead && isPast(lead.word) && badge(lead.word, `${lead.reads} `),
        bound(`${text('says') ?? ''}${pace ? ` Pace: ${pace}.` : ''}`),
      ),
    );
  });
}
