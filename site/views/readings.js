// The log of the boat in hand: one form for any reading, every series with its
// trend when it is opened, and the way to and from a spreadsheet.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { Form } from '../form/form.js';
import { seekable } from '../form/seek.js';
import { timeOfDay, today } from '../kit/dates.js';
import { button, drawAnew, h } from '../kit/dom.js';
import { at, tidied } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { lateFold } from '../sheet/folds.js';
import { picture } from '../sheet/picture.js';
import { work } from '../sheet/sheet.js';
import { byDay, entryForm, readIn } from './entries.js';
import { readingTools } from './exchange.js';
import { boatOf, isLong, readingsOf, withoutLog } from './asks.js';
import { moon } from './home.js';
import { tellLead } from './leads.js';
import { units } from '../store/settings.js';
import { change, inHand, keepTyped, nameOf, onShelf, toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Series} Series */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */
/** @typedef {import('../../wasm/marinecalc.js').ReadingChart} ReadingChart */

/** @type {import('../app.js').View} */
export function showReadings(app, main, wanted = '') {
  const { id } = inHand();
  const title = `Readings: ${nameOf(onShelf(id).boat)}`;
  const boat = () => toSend(onShelf(id).boat) ?? { name: nameOf({}) };
  const again = () => drawAnew(main, () => showReadings(app, main));
  const long = isLong(boat());
  const reply = app.calculator.call(readingsOf(long ? withoutLog(boat()) : boat()));
  main.append(h('h1', {}, title), warningList(reply, 'h2'));
  if (!reply.ok) {
    main.append(...said(reply.problems), h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat')));
    return title;
  }
  const { series } = reply;
  const any = h('details', { class: 'card' }, h('summary', {}, h('span', { class: 'card-title' }, 'Any one reading')), logForm(app, id, series, again));
  const log = (/** @type {string} */ name) => {
    any.open = true;
    const which = /** @type {HTMLSelectElement} */ (any.querySelector('#log-reading'));
    which.value = name;
    which.dispatchEvent(new Event('change'));
    /** @type {HTMLElement | null} */ (any.querySelector('#log-value'))?.focus();
  };
  const daily = dailyForm(app, id, reply.daily, again);
  const list = h('div', {}, long ? h('p', {}, 'The readings are being gone through…') : '');
  main.append(
    daily.element,
    any,
    h('section', { 'aria-labelledby': 'series-title' }, h('h2', { id: 'series-title' }, 'What was read'), list),
    byDay(app, id, again),
    readingTools(app, id, again),
  );
  const fill = (/** @type {typeof reply} */ { series, charts = [], daily: often }) => {
    const byName = new Map(charts.map((c) => [c.reading, c]));
    daily.last(byName);
    daily.lead(byName, boat());
    list.replaceChildren(...seriesList(app, series, often, byName, boat, log));
    reveal(main, wanted);
  };
  if (!long) fill(reply);
  else {
    // What thousands of readings say comes when it is found; one can log meanwhile.
    void app.aside(readingsOf(boat())).then((whole) => {
      if (!list.isConnected) return;
      if (whole.ok) fill(whole);
      else list.replaceChildren(...said(whole.problems));
    });
  }
  return title;
}

/**
 * Every series that was read, what is read daily first.
 * @param {import('../app.js').App} app
 * @param {Series[]} series
 * @param {string[]} daily
 * @param {Map<string, ReadingChart>} charts
 * @param {() => Json} boat
 * @param {(name: string) => void} log
 */
function seriesList(app, series, daily, charts, boat, log) {
  const read = series.filter((s) => s.readings > 0 && !s.aside);
  const often = read.filter((s) => daily.includes(s.reading));
  const seldom = read.filter((s) => !often.includes(s));
  const row = (/** @type {Series} */ s) =>
    h('div', { class: 'series' }, seriesFold(app, s, charts.get(s.reading), boat), s.loggable && button('Log', () => log(s.reading), { 'aria-label': `Log: ${s.title}` }));
  if (read.length === 0) return [h('p', {}, 'Nothing yet.')];
  if (often.length === 0 || seldom.length === 0) return read.map(row);
  return [...often.map(row), h('details', { class: 'card others' }, h('summary', {}, h('span', { class: 'card-title' }, `${seldom.length} more`)), ...seldom.map(row))];
}

/**
 * Opens the series that the address names.
 * @param {HTMLElement} main
 * @param {string} wanted
 */
function reveal(main, wanted) {
  const fold = wanted !== '' && main.querySelector(`[data-series="${CSS.escape(wanted)}"]`);
  if (!(fold instanceof HTMLDetailsElement)) return;
  for (let up = fold.parentElement; up; up = up.parentElement) if (up instanceof HTMLDetailsElement) up.open = true;
  fold.open = true;
  fold.scrollIntoView();
}

/**
 * One series: its newest reading, and where it leads once it is opened.
 * @param {import('../app.js').App} app
 * @param {Series} series
 * @param {import('../../wasm/marinecalc.js').ReadingChart | undefined} chart
 * @param {() => Json} boat
 */
function seriesFold(app, series, chart, boat) {
  const many = series.readings === 1 ? 'one reading' : `${series.readings} readings`;
  const from = [series.date, series.time, series.source].filter(Boolean).join(', ');
  const fold = lateFold(`${series.title}: ${series.newest} (${from}; ${many}${series.baseline ? ', with a baseline' : ''})`, () => {
    const place = h('div', {}, h('p', {}, 'Being drawn…'));
    void app.aside({ ask: 'run', calculation: 'reading-trend', input: { reading: series.reading }, boat: boat(), units: units(), noRanges: true }).then((reply) => {
      place.replaceChildren(...(reply.ok ? [toLimit(series.reading), h('div', { class: 'sheet' }, ...work(reply.sheet))] : said(reply.problems)));
    });
    return [place];
  });
  fold.setAttribute('data-series', series.reading);
  if (chart) {
    fold.querySelector('summary')?.replaceChildren(
      h('span', { class: 'row-what' }, series.title),
      h('strong', {}, chart.value),
      h('span', { class: 'chart-age' }, moon(chart.fresh), [chart.age, many, series.source, series.baseline && 'with a baseline'].filter(Boolean).join(', ')),
      h('span', { class: 'spark drawing' }, chart.chart ? picture(chart.chart) : ''),
    );
  }
  return fold;
}

/** The way to the sheet on which a limit is typed. @param {string} reading */
function toLimit(reading) {
  const way = h('a', { class: 'as-button', href: '#/sheet/reading-trend' }, 'Set a limit');
  way.addEventListener('click', () => keepTyped(inHand().id, 'reading-trend', { reading }));
  return way;
}

/**
 * The form that logs any one reading.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {Series[]} series
 * @param {() => void} again
 */
function logForm(app, id, series, again) {
  const asked = app.calculator.call(boatOf());
  const gauges = (asked.ok && asked.choices.gauges) || [];
  const loggable = series.filter((s) => s.loggable);
  const which = h('select', { id: 'log-reading' }, ...loggable.map((s) => h('option', { value: s.reading }, s.title)));
  seekable(which);
  const value = h('input', { id: 'log-value', autocomplete: 'off' });
  const date = h('input', { id: 'log-date', type: 'date', value: today() });
  const time = h('input', { id: 'log-time', type: 'time', value: timeOfDay() });
  const source = h('input', { id: 'log-source', autocomplete: 'off', maxlength: 120 });
  const gauge = h('select', { id: 'log-gauge' }, h('option', { value: '' }, 'the usual one'), ...gauges.map((g) => h('option', { value: g.pick }, g.name)));
  const baseline = h('input', { id: 'log-baseline', type: 'checkbox' });
  const wrong = h('div', { role: 'alert' });
  const picked = () => loggable.find((s) => s.reading === which.value);
  const unit = () => picked()?.units[units() === 'us' ? 1 : 0] ?? '';
  const hint = h('p', { class: 'help', id: 'log-unit' });
  const tellUnit = () => {
    hint.textContent = unit() === '' ? 'A number.' : `A bare number is read as ${unit()}.`;
  };
  which.addEventListener('change', tellUnit);
  tellUnit();
  const keep = async () => {
    const sent = toSend(onShelf(id).boat) ?? { name: nameOf({}) };
    const reply = await app.aside({
      ask: 'log',
      boat: sent,
      reading: {
        reading: which.value,
        value: app.read(value.value, { quantity: picked()?.kind }, unit()),
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
      logged = { on: date.value, names: [which.value] };
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
    h('div', { class: 'tools' }, button('Log it', () => void keep())),
    h('p', { class: 'help' }, 'Gaps of the coupling and other lists are written down with the ', h('a', { href: '#/boat' }, 'boat'), ', and so are readings of your own that are not in the list yet.'),
    wrong,
  );
}

/** What was logged just now. @type {{ on: string, names: string[] }} */
let logged = { on: '', names: [] };

/**
 * What is read daily, today's date filled in; everything else behind one line.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {string[]} daily
 * @param {() => void} again
 */
function dailyForm(app, id, daily, again) {
  const first = ['date', 'engineHours', ...daily];
  const row = { date: today(), time: timeOfDay() };
  const { form, check } = entryForm(app, id, row, 'day', (name) => first.includes(name));
  const wrong = h('div', { role: 'alert' });
  /** @type {Form | undefined} */
  let others;
  const more = lateFold('Everything else that can be read', () => {
    const rest = entryForm(app, id, form.value, 'day', (name) => !first.includes(name), (value) => (form.value = value));
    others = rest.form;
    others.showOrigins({});
    return [others.element];
  });
  form.showOrigins({});
  const keep = () => {
    const value = /** @type {Json} */ (tidied({ ...(others?.value ?? {}), ...form.value }, {}) ?? {});
    if (readIn(value).length === 0) {
      wrong.replaceChildren(h('p', { class: 'wrong' }, 'Nothing is filled in yet.'));
      return;
    }
    const problems = check(value);
    wrong.replaceChildren(...told(problems));
    if (problems.length > 0) return;
    const { boat } = onShelf(id);
    const readings = at(boat, '/readings');
    change(id, boat, { ...boat, readings: [...(Array.isArray(readings) ? readings : []), value] });
    logged = { on: String(value.date ?? ''), names: readIn(value) };
    again();
    speak('Logged');
  };
  const now = logged;
  logged = { on: '', names: [] };
  const leads = h('div', { role: 'status' });
  const element = h(
    'section',
    { class: 'daily', 'aria-labelledby': 'daily-title' },
    h('h2', { id: 'daily-title' }, 'Log today'),
    form.element,
    more,
    wrong,
    h('div', { class: 'tools' }, button('Log these readings', keep), now.on && h('p', { role: 'status' }, `Logged: ${now.on}`)),
    leads,
  );
  return {
    element,
    /** Where what was logged just now leads. @param {Map<string, ReadingChart>} charts @param {Json} boat */
    lead: (charts, boat) => now.names.flatMap((name) => charts.get(name) ?? []).forEach((series) => tellLead(app, boat, series, leads)),
    /** Shows what was read last beside the fields. @param {Map<string, ReadingChart>} charts */
    last: (charts) => form.showOrigins(Object.fromEntries([...charts].map(([name, c]) => [name, { text: c.value, words: 'last' }]))),
  };
}

/** @param {Problem[]} problems */
function told(problems) {
  return problems.map((p) => h('p', { class: 'wrong' }, inWords(p)));
}

/** @param {Problem[]} problems */
function said(problems) {
  return problems.map((p) => h('p', { class: 'wrong' }, inWords(p)));
}

