// The log of the boat in hand: one form for any reading, every series with its
// trend when it is opened, and the way to and from a spreadsheet.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { button, drawAnew, h } from '../kit/dom.js';
import { lateFold } from '../sheet/folds.js';
import { work } from '../sheet/sheet.js';
import { forFile, saveFile } from '../store/files.js';
import { units } from '../store/settings.js';
import { change, inHand, nameOf, onShelf, toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Series} Series */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */

/** @type {import('../app.js').View} */
export function showReadings(app, main) {
  const { id } = inHand();
  const title = `Readings: ${nameOf(onShelf(id).boat)}`;
  const boat = () => toSend(onShelf(id).boat) ?? {};
  const again = () => drawAnew(main, () => showReadings(app, main));
  const reply = app.calculator.call({ ask: 'readings', boat: boat() });
  main.append(h('h1', {}, title), warningList(reply, 'h2'));
  if (!reply.ok) {
    main.append(...said(reply.problems), h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat')));
    return title;
  }
  const { series } = reply;
  const read = series.filter((s) => s.readings > 0);
  main.append(
    logForm(app, id, series, again),
    h(
      'section',
      { 'aria-labelledby': 'series-title' },
      h('h2', { id: 'series-title' }, 'What was read'),
      read.length === 0 && h('p', {}, 'Nothing yet.'),
      ...read.map((s) => seriesFold(app, s, boat)),
    ),
    readingTools(app, id, again),
  );
  return title;
}

/**
 * One series: its newest reading, and where it leads once it is opened.
 * @param {import('../app.js').App} app
 * @param {Series} series
 * @param {() => Json} boat
 */
function seriesFold(app, series, boat) {
  const many = series.readings === 1 ? 'one reading' : `${series.readings} readings`;
  const from = [series.date, series.time, series.source].filter(Boolean).join(', ');
  const fold = lateFold(`${series.title}: ${series.newest} (${from}; ${many}${series.baseline ? ', with a baseline' : ''})`, () => {
    const reply = app.calculator.call({ ask: 'run', calculation: 'reading-trend', input: { reading: series.reading }, boat: boat(), units: units(), noRanges: true });
    return reply.ok ? [h('div', { class: 'sheet' }, ...work(reply.sheet))] : said(reply.problems);
  });
  fold.setAttribute('data-series', series.reading);
  return fold;
}

/**
 * The form that logs any one reading.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {Series[]} series
 * @param {() => void} again
 */
function logForm(app, id, series, again) {
  const asked = app.calculator.call({ ask: 'boat' });
  const gauges = (asked.ok && asked.choices.gauges) || [];
  const loggable = series.filter((s) => s.loggable);
  const today = new Date();
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
  const which = h('select', { id: 'log-reading' }, ...loggable.map((s) => h('option', { value: s.reading }, s.title)));
  const value = h('input', { id: 'log-value', autocomplete: 'off' });
  const date = h('input', { id: 'log-date', type: 'date', value: `${today.getFullYear()}-${two(today.getMonth() + 1)}-${two(today.getDate())}` });
  const time = h('input', { id: 'log-time', type: 'time', value: `${two(today.getHours())}:${two(today.getMinutes())}` });
  const source = h('input', { id: 'log-source', autocomplete: 'off', maxlength: 120 });
  const gauge = h('select', { id: 'log-gauge' }, h('option', { value: '' }, 'the usual one'), ...gauges.map((g) => h('option', { value: g.pick }, g.name)));
  const baseline = h('input', { id: 'log-baseline', type: 'checkbox' });
  const wrong = h('div', { role: 'alert' });
  const unit = () => loggable.find((s) => s.reading === which.value)?.units[units() === 'us' ? 1 : 0] ?? '';
  const hint = h('p', { class: 'help', id: 'log-unit' });
  const tellUnit = () => {
    hint.textContent = unit() === '' ? 'A number.' : `A bare number is read as ${unit()}.`;
  };
  which.addEventListener('change', tellUnit);
  tellUnit();
  const keep = () => {
    const bare = /^[-+]?[0-9]+([.,][0-9]+)?$/.test(value.value.trim()) && unit() !== '';
    const sent = toSend(onShelf(id).boat) ?? {};
    const reply = app.calculator.call({
      ask: 'log',
      boat: sent,
      reading: {
        reading: which.value,
        value: bare ? `${value.value.trim()} ${unit()}` : value.value.trim(),
        date: date.value,
        ...(time.value !== '' && { time: time.value }),
        ...(source.value !== '' && { source: source.value }),
        ...(gauge.value !== '' && { gauge: gauge.value }),
        ...(baseline.checked && { baseline: true }),
      },
    });
    if (!reply.ok) wrong.replaceChildren(...said(reply.problems));
    else {
      change(id, sent, reply.boat);
      again();
    }
  };
  /**
   * @param {string} label
   * @param {HTMLElement} control
   * @param {HTMLElement} [help]
   */
  const field = (label, control, help) => h('div', { class: 'field' }, h('label', { for: control.id }, label), h('div', { class: 'entry' }, control), help);
  return h(
    'section',
    { 'aria-labelledby': 'log-title' },
    h('h2', { id: 'log-title' }, 'Log a reading'),
    h(
      'div',
      { class: 'form' },
      field('Reading', which),
      field('Value', value, hint),
      field('Date', date),
      field('Time', time),
      field('Read by', source),
      field('Read with', gauge),
      field('All was well: a baseline', baseline),
    ),
    h('div', { class: 'tools' }, button('Log it', keep)),
    h('p', { class: 'help' }, 'Gaps of the coupling and other lists are written down with the ', h('a', { href: '#/boat' }, 'boat'), ', and so are readings of your own that are not in the list yet.'),
    wrong,
  );
}

/** @param {Problem[]} problems */
function said(problems) {
  return problems.map((p) => h('p', { class: 'wrong' }, inWords(p)));
}

/**
 * Readings to and from a spreadsheet, as CSV.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {() => void} again draws the boat anew
 */
export function readingTools(app, id, again) {
  const boat = () => toSend(onShelf(id).boat) ?? {};
  const told = h('div', { role: 'alert' });
  const refuse = (/** @type {Problem[]} */ problems) => told.replaceChildren(...problems.map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`)));
  const file = h('input', { type: 'file', accept: '.csv,text/csv', hidden: true, 'aria-label': 'Readings as CSV' });
  file.addEventListener('change', async () => {
    const csv = await file.files?.[0]?.text();
    file.value = '';
    if (csv === undefined) return;
    const sent = boat();
    const reply = app.calculator.call({ ask: 'add-readings', boat: sent, csv });
    if (!reply.ok) refuse(reply.problems);
    else {
      change(id, sent, reply.boat);
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
      h('a', { href: '#/readings' }, 'Log and follow readings'),
      button('Save the readings as CSV', () => {
        const reply = app.calculator.call({ ask: 'readings', boat: boat() });
        if (reply.ok) saveFile(`${forFile(nameOf(boat()))}-readings.csv`, 'text/csv', reply.csv);
        else refuse(reply.problems);
      }),
      button('Add readings from CSV', () => file.click()),
      file,
    ),
    told,
  );
}
