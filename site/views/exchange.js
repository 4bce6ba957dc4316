// Readings to and from other programs: a table as CSV, and what the boat's own
// instruments have logged as Signal K.

import { inWords } from '../form/field.js';
import { goneWhenTyped } from '../form/problems.js';
import { button, h } from '../kit/dom.js';
import { forFile, saveFile } from '../store/files.js';
import { change, nameOf, onShelf, toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */
/** @typedef {import('../../wasm/marinecalc.js').SignalK} SignalK */

/**
 * Readings into a file and out of one.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {() => void} again draws the view anew
 */
export function readingTools(app, id, again) {
  const boat = () => toSend(onShelf(id).boat) ?? { name: 'Boat without a name' };
  const told = h('div', { role: 'alert' });
  const refuse = (/** @type {Problem[]} */ problems) => {
    told.replaceChildren(...problems.slice(0, 12).map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`)));
    goneWhenTyped(told);
  };
  const file = h('input', { type: 'file', accept: '.csv,.json,.jsonl,.log,.txt,text/csv,application/json', hidden: true, 'aria-label': 'Readings as CSV or Signal K' });
  file.addEventListener('change', async () => {
    const chosen = file.files?.[0];
    file.value = '';
    if (!chosen) return;
    told.replaceChildren(h('p', {}, `${chosen.name} is being read…`));
    const text = textOf(await chosen.arrayBuffer());
    if (text === undefined) return refuse([{ where: chosen.name, what: 'it is not UTF-8 text', allowed: 'CSV or Signal K, in UTF-8', hint: 'Save it as UTF-8 where it was written.' }]);
    const sent = boat();
    if (!isSignalK(text)) {
      const reply = await app.aside({ ask: 'add-readings', boat: sent, csv: text });
      if (!reply.ok) return refuse(reply.problems);
      change(id, sent, reply.boat);
      return again();
    }
    const reply = await app.aside({ ask: 'add-signal-k', boat: sent, signalK: text });
    if (!reply.ok) return refuse(reply.problems);
    told.replaceChildren(...became(reply.signalK));
    if (reply.signalK.added === 0) return;
    change(id, sent, reply.boat);
    told.append(button('Show the readings', again));
  });
  return h(
    'section',
    { 'aria-labelledby': 'readings-title' },
    h('h2', { id: 'readings-title' }, 'Readings in files'),
    h(
      'div',
      { class: 'tools' },
      !location.hash.startsWith('#/readings') && h('a', { href: '#/readings' }, 'Log and follow readings'),
      button('Save the readings as CSV', async () => {
        const reply = await app.aside({ ask: 'readings', boat: boat() });
        if (reply.ok) saveFile(`${forFile(nameOf(boat()))}-readings.csv`, 'text/csv', reply.csv);
        else refuse(reply.problems);
      }),
      button('Add readings from a file', () => file.click()),
      file,
    ),
    h('p', { class: 'help' }, 'A table as CSV, or Signal K that the boat’s instruments logged.'),
    told,
  );
}

/** The text of a file; undefined where it is none. @param {ArrayBuffer} bytes */
function textOf(bytes) {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Whether a text is Signal K: JSON, as a whole or line by line, where a table begins with names. @param {string} text */
export function isSignalK(text) {
  return /^\s*[{[]/.test(text);
}

/**
 * What became of the samples.
 * @param {SignalK} report
 */
function became({ entries, added, taken, unknown, more, others, timeless, left }) {
  const listed = (/** @type {SignalK['taken']} */ some) => h('ul', {}, ...some.map(({ path, samples, reading }) => h('li', {}, `${path}: ${samples}${reading ? ` to ${reading}` : ''}`)));
  const lost = Object.entries(left ?? {});
  return [
    h('p', {}, added === 0 ? (entries === 0 ? 'No readings of this boat were found in it.' : 'All of it stood in the log already.') : `${added === 1 ? 'One entry was' : `${added} entries were`} added to the log.`),
    ...(taken.length > 0 ? [h('details', { class: 'fold' }, h('summary', {}, `Taken: ${taken.length} kinds`), listed(taken))] : []),
    ...(unknown.length > 0 ? [h('details', { class: 'fold' }, h('summary', {}, `Not used: ${unknown.length + (more ?? 0)} kinds`), listed(unknown))] : []),
    ...(others > 0 ? [h('p', { class: 'help' }, `${others} of other vessels were left out.`)] : []),
    ...(timeless > 0 ? [h('p', { class: 'help' }, `${timeless} without a time were left out.`)] : []),
    ...(lost.length > 0 ? [h('p', { class: 'wrong' }, `Beyond what can be, and left out: ${lost.map(([name, n]) => `${name} (${n})`).join(', ')}.`)] : []),
  ];
}
