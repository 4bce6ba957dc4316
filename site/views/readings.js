// Dated readings to and from a spreadsheet, as CSV.

import { inWords } from '../form/field.js';
import { button, h } from '../kit/dom.js';
import { forFile, saveFile } from '../store/files.js';
import { change, nameOf, toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * Tools for the readings of the boat in hand.
 * @param {import('../app.js').App} app
 * @param {() => Json} boat as it is now
 * @param {() => void} again draws the boat anew
 */
export function readingTools(app, boat, again) {
  const said = h('div', { role: 'alert' });
  const refuse = (/** @type {import('../../wasm/marinecalc.js').Problem[]} */ problems) =>
    said.replaceChildren(...problems.map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`)));
  const file = h('input', { type: 'file', accept: '.csv,text/csv', hidden: true, 'aria-label': 'Readings as CSV' });
  file.addEventListener('change', async () => {
    const csv = await file.files?.[0]?.text();
    file.value = '';
    if (csv === undefined) return;
    const reply = app.calculator.call({ ask: 'add-readings', boat: toSend(boat()) ?? {}, csv });
    if (!reply.ok) refuse(reply.problems);
    else {
      change(reply.boat);
      again();
    }
  });
  return h(
    'section',
    { 'aria-labelledby': 'readings-title' },
    h('h2', { id: 'readings-title' }, 'Readings and spreadsheets'),
    h(
      'div',
      { class: 'tools' },
      button('Save the readings as CSV', () => {
        const reply = app.calculator.call({ ask: 'readings', boat: toSend(boat()) ?? {} });
        if (reply.ok) saveFile(`${forFile(nameOf(boat()))}-readings.csv`, 'text/csv', reply.csv);
        else refuse(reply.problems);
      }),
      button('Add readings from CSV', () => file.click()),
      file,
    ),
    said,
  );
}
