// The log of the boat in hand: one form for any reading, every series with its
// trend when it is opened, and the way to and from a spreadsheet.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { Form } from '../form/form.js';
import { timeOfDay, today } from '../kit/dates.js';
import { button, drawAnew, h } from '../kit/dom.js';
import { at, tidied } from '../kit/pointer.js';
import { speak } from '../kit/speak.js';
import { lateFold } from '../sheet/folds.js';
import { picture } from '../sheet/picture.js';
import { work } from '../sheet/sheet.js';
import { moon } from './home.js';
import { forFile, saveFile } from '../store/files.js';
import { units } from '../store/settings.js';
import { change, inHand, nameOf, onShelf, toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Series} Series */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */

/** @type {import('../app.js').View} */
export function showReadings(app, main, wanted = '') {
  const { id } = inHand();
  const title = `Readings: ${nameOf(onShelf(id).boat)}`;
  const boat = () => toSend(onShelf(id).boat) ?? {};
  const again = () => drawAnew(main, () => showReadings(app, main));
  const reply = app.calculator.call({ ask: 'readings', boat: boat(), date: today(), units: units() });
  main.append(h('h1', {}, title), warningList(reply, 'h2'));
  if (!reply.ok) {
    main.append(...said(reply.problems), h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat')));
    return title;
  }
  const { series } = reply;
  const read = series.filter((s) => s.readings > 0 && !s.reading.endsWith('/turn'));
  const often = read.filter((s) => reply.daily.includes(s.reading));
  const seldom = read.filter((s) => !often.includes(s));
  const row = (/** @type {Series} */ s) =>
    h('div', { class: 'series' }, seriesFold(app, s, charts.get(s.reading), boat), s.loggable && button('Log', () => log(s.reading), { 'aria-label': `Log: ${s.title}` }));
  const charts = new Map((reply.charts ?? []).map((c) => [c.reading, c]));
  const any = h('details', { class: 'card' }, h('summary', {}, h('span', { class: 'card-title' }, 'Any one reading')), logForm(app, id, series, again));
  const log = (/** @type {string} */ name) => {
    any.open = true;
    const which = /** @type {HTMLSelectElement} */ (any.querySelector('#log-reading'));
    which.value = name;
    which.dispatchEvent(new Event('change'));
    /** @type {HTMLElement | null} */ (any.querySelector('#log-value'))?.focus();
  };
  main.append(
    dailyForm(app, id, reply.daily, charts, again),
    any,
    h(
      'section',
      { 'aria-labelledby': 'series-title' },
      h('h2', { id: 'series-title' }, 'What was read'),
      read.length === 0 && h('p', {}, 'Nothing yet.'),
      ...often.map(row),
      seldom.length > 0 && (often.length > 0 ? h('details', { class: 'card others' }, h('summary', {}, h('span', { class: 'card-title' }, `${seldom.length} more`)), ...seldom.map(row)) : h('div', {}, ...seldom.map(row))),
    ),
    byDay(app, id, again),
    readingTools(app, id, again),
  );
  const fold = wanted !== '' && main.querySelector(`[data-series="${CSS.escape(wanted)}"]`);
  if (fold instanceof HTMLDetailsElement) {
    for (let up = fold.parentElement; up; up = up.parentElement) if (up instanceof HTMLDetailsElement) up.open = true;
    fold.open = true;
    fold.scrollIntoView();
  }
  return title;
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
    const reply = app.calculator.call({ ask: 'run', calculation: 'reading-trend', input: { reading: series.reading }, boat: boat(), units: units(), noRanges: true });
    return reply.ok ? [h('div', { class: 'sheet' }, ...work(reply.sheet))] : said(reply.problems);
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
  const which = h('select', { id: 'log-reading' }, ...loggable.map((s) => h('option', { value: s.reading }, s.title)));
  const value = h('input', { id: 'log-value', autocomplete: 'off' });
  const date = h('input', { id: 'log-date', type: 'date', value: today() });
  const time = h('input', { id: 'log-time', type: 'time', value: timeOfDay() });
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

/**
 * The form of a dated entry, checked by itself.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {Json} row
 * @param {string} prefix
 * @param {(name: string) => boolean} shown which members it has
 * @param {(row: Json) => void} [changed]
 */
function entryForm(app, id, row, prefix, shown, changed) {
  const asked = app.calculator.call({ ask: 'boat' });
  if (!asked.ok) throw new Error(asked.problems.map(inWords).join(' '));
  const item = /** @type {import('../../wasm/marinecalc.js').Schema} */ (asked.schema.properties?.readings?.items ?? {});
  const schema = { ...item, properties: Object.fromEntries(Object.entries(item.properties ?? {}).filter(([name]) => shown(name))) };
  const form = new Form({
    root: asked.schema,
    schema,
    value: row,
    prefix,
    units: units(),
    choices: asked.choices ?? {},
    read: app.read,
    folds: true,
    changed: (value) => changed?.(/** @type {Json} */ (tidied(value, row) ?? {})),
  });
  /** Whether it can be kept; what is wrong stands at its field. @param {Json} value */
  const check = (value) => {
    const { mounts, ownReadings } = onShelf(id).boat;
    const reply = app.calculator.call({ ask: 'boat', boat: { name: 'X', ...(mounts ? { mounts } : {}), ...(ownReadings ? { ownReadings } : {}), readings: [value] } });
    const problems = reply.ok ? [] : reply.problems.map((p) => ({ ...p, where: p.where.replace(/^\/boat\/readings\/0/, '') }));
    form.take(problems);
    return problems;
  };
  return { form, check };
}

/**
 * What is read daily, today's date filled in; everything else behind one line.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {string[]} daily
 * @param {Map<string, import('../../wasm/marinecalc.js').ReadingChart>} charts
 * @param {() => void} again
 */
function dailyForm(app, id, daily, charts, again) {
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
  form.showOrigins(Object.fromEntries([...charts].map(([name, c]) => [name, { text: c.value, words: 'last' }])));
  const keep = () => {
    const value = /** @type {Json} */ (tidied({ ...(others?.value ?? {}), ...form.value }, {}) ?? {});
    const said = Object.keys(value).filter((name) => !['date', 'time', 'source'].includes(name));
    if (said.length === 0) {
      wrong.replaceChildren(h('p', { class: 'wrong' }, 'Nothing is filled in yet.'));
      return;
    }
    const problems = check(value);
    wrong.replaceChildren(...told(problems));
    if (problems.length > 0) return;
    const { boat } = onShelf(id);
    const readings = at(boat, '/readings');
    change(id, boat, { ...boat, readings: [...(Array.isArray(readings) ? readings : []), value] });
    again();
    speak('Logged');
  };
  return h(
    'section',
    { class: 'daily', 'aria-labelledby': 'daily-title' },
    h('h2', { id: 'daily-title' }, 'Log today'),
    form.element,
    more,
    wrong,
    h('div', { class: 'tools' }, button('Log these readings', keep)),
  );
}

const PAGE = 50;

/**
 * Every dated entry, newest first, fifty at a time; each opens to its form.
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {() => void} again
 */
function byDay(app, id, again) {
  const readings = at(onShelf(id).boat, '/readings');
  const all = Array.isArray(readings) ? /** @type {Json[]} */ (readings) : [];
  if (all.length === 0) return '';
  const order = all.map((_, i) => i).sort((a, b) => (day(all[b]) < day(all[a]) ? -1 : day(all[b]) > day(all[a]) ? 1 : b - a));
  return lateFold(`All readings by day (${all.length})`, () => {
    const list = h('div', {});
    const next = button('', () => add(), { class: 'quiet' });
    let shown = 0;
    const add = () => {
      for (const i of order.slice(shown, shown + PAGE)) list.append(entryFold(app, id, i, again));
      shown = Math.min(shown + PAGE, order.length);
      next.textContent = `${Math.min(PAGE, order.length - shown)} more`;
      next.hidden = shown === order.length;
    };
    add();
    return [list, next];
  });
}

/** When an entry was read, to sort by. @param {Json | undefined} entry */
function day(entry) {
  return `${entry?.date ?? ''}${entry?.time ?? ''}`;
}

/**
 * @param {import('../app.js').App} app
 * @param {string} id of the boat
 * @param {number} i of the entry
 * @param {() => void} again
 */
function entryFold(app, id, i, again) {
  const list = () => /** @type {Json[]} */ (at(onShelf(id).boat, '/readings') ?? []);
  const entry = list()[i] ?? {};
  const n = Object.keys(entry).filter((name) => !['date', 'time', 'source'].includes(name)).length;
  return lateFold(`${[entry.date ?? 'no date', entry.time].filter(Boolean).join(' ')}: ${n === 1 ? 'one entry' : `${n} entries`}`, () => {
    let now = list()[i] ?? {};
    const { form, check } = entryForm(app, id, now, `reading-${i}`, () => true, (value) => {
      const { boat } = onShelf(id);
      const readings = list().map((row, k) => (k === i ? value : row));
      now = value;
      change(id, boat, { ...boat, readings });
      check(value);
    });
    form.showOrigins({});
    check(now);
    const away = button('Remove this day', () => {
      const { boat } = onShelf(id);
      const to = { ...boat, readings: list().filter((_, k) => k !== i) };
      change(id, boat, to);
      const back = button('Put it back', () => {
        change(id, to, boat);
        again();
      });
      away.replaceWith(h('span', {}, 'Removed. '), back);
      form.element.remove();
      back.focus();
    }, { class: 'quiet' });
    return [form.element, h('p', { class: 'tools' }, away)];
  });
}

/** @param {Problem[]} problems */
function told(problems) {
  return problems.map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`));
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
      !location.hash.startsWith('#/readings') && h('a', { href: '#/readings' }, 'Log and follow readings'),
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
