// The sheet as the person reads it: what can hurt first, then the answers
// with their verdicts, then how they came about.

import { bound, h, s } from '../kit/dom.js';
import { firstResult, leadVerdict, makerSays, stands, verdictLine } from './answer.js';
import { folds } from './folds.js';
import { picture } from './picture.js';
import { backing, verdictCard } from './verdicts.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {import('../../wasm/marinecalc.js').Result} Result */

/**
 * What stands behind the answer: the other results and limits in a line each,
 * lists and drawings, and one drawer with how it all came about.
 * @param {Sheet} sheet
 * @param {{ [table: string]: string[] }} [opens] the calculations behind the rows of a list
 * @param {string[]} [above] lists that an instrument shows above
 * @returns {HTMLElement[]}
 */
export function behind(sheet, opens = {}, above = []) {
  const main = (sheet.results ?? []).filter((r) => r.level !== 'detail').slice(1);
  const lead = leadVerdict(sheet);
  const first = firstResult(sheet);
  const judged = (sheet.verdicts ?? []).filter((v) => v.word !== 'not measured' && v !== lead && v.on !== first?.name);
  const fold = folds(sheet.calculation);
  return present([
    conflicts(sheet),
    judged.length > 0 && h('section', { class: 'others' }, h('h3', {}, 'Other limits'), ...judged.map(verdictLine)),
    main.length > 0 && h('section', { class: 'also-found' }, h('h3', {}, 'Also'), h('div', {}, ...main.map(resultLine))),
    ...(sheet.tables ?? []).filter((t) => t.level !== 'detail').map((t) => (above.includes(t.name) ? fold(t.title, ...listed(t, fold)) : h('section', { class: 'listed' }, h('h3', {}, t.title), ...listed(t, fold)))),
    ...(sheet.drawings ?? []).map((d) => opening(drawing(d), Object.values(opens).flat())),
    notes(sheet),
    drawer(sheet, fold),
  ]);
}

/**
 * @param {Sheet} sheet
 * @param {(title: string, ...inside: Node[]) => HTMLElement} fold
 */
function drawer(sheet, fold) {
  const results = sheet.results ?? [];
  const main = results.filter((r) => r.level !== 'detail');
  const detail = results.filter((r) => r.level === 'detail');
  const verdicts = sheet.verdicts ?? [];
  const helped = main.filter((r) => r.help);
  const inside = present([
    helped.length > 0 && h('dl', { class: 'in-short' }, ...helped.flatMap((r) => [h('dt', {}, r.title, symbol(r.symbol)), h('dd', {}, r.help)])),
    verdicts.length > 0 && fold(`Limits and where they come from (${verdicts.length})`, ...verdicts.map(verdictCard)),
    detail.length > 0 && fold('More results', resultTable(detail)),
    ...(sheet.tables ?? []).filter((t) => t.level === 'detail').map((t) => fold(t.title, ...listed(t, fold))),
    fold('How it was calculated', workedLines(sheet)),
    fold('Inputs used', inputTable(sheet)),
    main.some((r) => r.shares?.length) &&
      fold('Where the uncertainty comes from', ...main.filter((r) => r.shares?.length).map(shares)),
    (sheet.next ?? []).length + (sheet.sources ?? []).length > 0 &&
      fold('Sources', h('ul', {}, ...(sheet.sources ?? []).map((text) => h('li', {}, text)))),
  ]);
  const made = fold('Why: numbers, working, sources', h('div', { class: 'inside' }, ...inside));
  made.classList.add('drawer');
  return made;
}

/** A result in a line. @param {Result} result */
function resultLine(result) {
  return h(
    'section',
    { class: 'result row', 'data-result': result.name },
    h('h4', {}, result.title),
    h('p', { class: result.kind ? 'value' : result.text.length > 120 ? 'value words long' : 'value words' }, result.text),
    result.interval && h('p', { class: 'interval' }, bound(result.interval)),
    makerSays(result),
  );
}

/**
 * The sheet's parts without its hazards, for a page that tells them once for
 * several sheets.
 * @param {Sheet} sheet
 * @returns {HTMLElement[]}
 */
export function work(sheet) {
  const results = sheet.results ?? [];
  const main = results.filter((r) => r.level !== 'detail');
  const detail = results.filter((r) => r.level === 'detail');
  const shown = new Set(main.map((r) => r.name));
  const others = (sheet.verdicts ?? []).filter((v) => !shown.has(v.on) && v.word !== 'not measured');
  const unmeasured = (sheet.verdicts ?? []).filter((v) => v.word === 'not measured');
  const tables = sheet.tables ?? [];
  const fold = folds(sheet.calculation);
  return present([
    conflicts(sheet),
    h('div', { class: 'answers' }, ...main.map((r, i) => resultCard(sheet, r, i === 0))),
    ...tables.filter((t) => t.level !== 'detail').map((t) => h('section', { class: 'listed' }, h('h3', {}, t.title), ...listed(t, fold))),
    others.length > 0 &&
      h('section', { class: 'others' }, h('h3', {}, 'Other limits'), ...others.map(verdictCard)),
    ...(sheet.drawings ?? []).map(drawing),
    nextSteps(sheet),
    notes(sheet),
    unmeasured.length > 0 && fold(`Not judged (${unmeasured.length})`, ...unmeasured.map(verdictCard)),
    detail.length > 0 && fold('More results', resultTable(detail)),
    ...tables.filter((t) => t.level === 'detail').map((t) => fold(t.title, ...listed(t, fold))),
    fold('How it was calculated', workedLines(sheet)),
    fold('Inputs used', inputTable(sheet)),
    main.some((r) => r.shares?.length) &&
      fold('Where the uncertainty comes from', ...main.filter((r) => r.shares?.length).map(shares)),
    (sheet.sources ?? []).length > 0 &&
      fold('Sources', h('ul', {}, ...(sheet.sources ?? []).map((text) => h('li', {}, text)))),
  ]);
}

/**
 * One line for the eye or the ear: the first result, and the worst that the
 * limits say of the sheet.
 * @param {Sheet} sheet
 */
export function headline(sheet) {
  const first = (sheet.results ?? []).find((r) => r.level !== 'detail');
  const verdicts = (sheet.verdicts ?? []).filter((v) => v.word !== 'not measured'); // worst first
  const own = verdicts.find((v) => v.on === first?.name);
  const [worst] = verdicts;
  const answer = first ? `${first.title}: ${stands(first).replace(/\.$/, '')}` : sheet.title;
  const judged = own ? `${answer} (${own.reads})` : answer;
  if (!worst || worst.reads === own?.reads) return judged;
  const others = verdicts.filter((v) => v.reads === worst.reads);
  return `${judged}. ${worst.title}: ${worst.reads}${others.length > 1 ? `, and ${others.length - 1} more` : ''}`;
}

/**
 * The line at the foot of a narrow screen: the figure and its verdict before
 * the names, which may be cut; of a figure in many words the verdict's word before them.
 * @param {Sheet} sheet
 */
export function atFoot(sheet) {
  const first = firstResult(sheet);
  const lead = leadVerdict(sheet);
  if (!first) return headline(sheet);
  const value = stands(first);
  const judged = lead && (lead.on === first.name ? lead.reads : `${lead.reads}: ${lead.title}`);
  const parts = first.kind || value.length <= 30 ? [value, judged, first.title] : [lead?.reads, value];
  return bound(parts.filter(Boolean).join(' · '));
}

/**
 * For the ear: the answer first, then the verdicts that are no plain OK.
 * @param {Sheet} sheet
 */
export function spoken(sheet) {
  const lead = leadVerdict(sheet);
  const others = (sheet.verdicts ?? []).filter((v) => v !== lead && !['within', 'not measured', 'inside the guide'].includes(v.word));
  const first = firstResult(sheet);
  return [`${first ? `${first.title}: ${stands(first).replace(/\.$/, '')}` : sheet.title}.`, lead?.sentence, ...others.map((v) => v.sentence)].filter(Boolean).join(' ');
}

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @param {boolean} first
 */
function resultCard(sheet, result, first) {
  const verdicts = (sheet.verdicts ?? []).filter((v) => v.on === result.name && v.word !== 'not measured');
  return h(
    'section',
    { class: first ? 'result first' : 'result', 'data-result': result.name },
    h('h3', {}, result.title, symbol(result.symbol)),
    h('p', { class: result.kind ? 'value' : 'value words' }, result.text),
    result.interval && h('p', { class: 'interval' }, `95 % interval: ${result.interval}`),
    result.help && h('p', { class: 'help' }, result.help),
    makerSays(result),
    ...verdicts.map(verdictCard),
  );
}

/** @param {Result[]} results */
function resultTable(results) {
  return table(
    ['Result', 'Value', '95 % interval'],
    results.map((r) => [h('span', {}, r.title, symbol(r.symbol)), r.text, r.interval ?? '']),
  );
}

/**
 * A result that is a list; of a long one the end is folded away, and columns of
 * detail with the whole.
 * @param {import('../../wasm/marinecalc.js').Table} given
 * @param {(title: string, ...inside: Node[]) => HTMLElement} fold
 */
export function listed(given, fold) {
  const cell = (/** @type {{ text: string, interval?: string }} */ c) =>
    h('span', {}, bound(c.text), c.interval && h('span', { class: 'aside' }, ` (${bound(c.interval)})`));
  const made = (/** @type {(level?: string) => boolean} */ shows, rows = given.rows) =>
    table(
      given.columns.filter((c) => shows(c.level)).map((c) => c.title),
      rows.map((row) => row.cells.filter((_, i) => shows(given.columns[i]?.level)).map(cell)),
    );
  const more = given.columns.some((c) => c.level === 'detail') && fold(`${given.title}: every column`, made(() => true));
  const plain = (/** @type {string | undefined} */ level) => level !== 'detail';
  const first = given.rows.length > 12 ? 8 : given.rows.length;
  const rest = first < given.rows.length && fold(`${given.title}: ${given.rows.length - first} more`, made(plain, given.rows.slice(first)));
  return present([given.help ? h('p', { class: 'help' }, given.help) : null, made(plain, given.rows.slice(0, first)), rest, more]);
}

/** @param {Sheet} sheet */
function inputTable(sheet) {
  return table(
    ['Input', 'Value', 'From'],
    (sheet.inputs ?? []).map((i) => [
      h('span', {}, i.title, i.kind ? symbol(i.symbol) : ''),
      h('span', {}, i.text, i.range && h('span', { class: 'range' }, ` (${i.range})`)),
      h('span', {}, i.origin, i.unverified && ', not confirmed', i.source && h('span', { class: 'source' }, backing(i))),
    ]),
  );
}

/** @param {Sheet} sheet */
function workedLines(sheet) {
  const titles = new Map([...(sheet.results ?? []), ...(sheet.tables ?? [])].map((r) => [r.name, r.title]));
  return h(
    'ol',
    { class: 'work' },
    ...(sheet.work ?? []).map((line) =>
      h(
        'li',
        {},
        h('p', { class: 'what' }, titles.get(line.result) ?? line.result),
        line.formula && h('p', { class: 'formula' }, line.formula),
        line.filled && h('p', { class: 'formula' }, line.filled),
        line.method && h('p', {}, line.method),
        h('p', { class: 'formula worked' }, `= ${line.answer}`),
        line.source && h('p', { class: 'source' }, line.basis ? `${line.source} (${line.basis})` : line.source),
      ),
    ),
  );
}

/**
 * @param {Result} result
 */
function shares(result) {
  return h(
    'div',
    { class: 'shares' },
    h('h3', {}, result.title),
    table(
      ['Input', 'Share of the uncertainty'],
      (result.shares ?? []).map(({ title, share }) => {
        const percent = Math.round(100 * Math.max(0, Math.min(1, share)));
        const bar = s(
          'svg',
          { class: 'bar', viewBox: '0 0 100 10', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
          s('rect', { class: 'bar-frame', width: 100, height: 10 }),
          s('rect', { class: 'bar-part', width: percent, height: 10 }),
        );
        return [title, h('span', { class: 'share' }, `${percent} %`, bar)];
      }),
    ),
  );
}

/**
 * @param {import('../../wasm/marinecalc.js').Drawing} given
 */
export function drawing(given) {
  const made = picture(given.svg);
  return h(
    'figure',
    { class: 'drawing', 'data-drawing': given.name },
    h('h3', {}, given.title),
    made ?? h('p', { class: 'wrong' }, 'This drawing holds something that may not be shown here.'),
    h('figcaption', {}, bound(given.description)),
  );
}

/**
 * A drawing whose parts open the sheets behind them; the same ways stand as
 * links in the list.
 * @param {HTMLElement} made
 * @param {string[]} opens
 */
function opening(made, opens) {
  for (const [i, calculation] of opens.entries()) {
    made.querySelector(`.opens[id$="row-${i}"]`)?.addEventListener('click', () => (location.hash = `#/sheet/${calculation}`));
  }
  return made;
}

/**
 * @param {Sheet} sheet
 */
function nextSteps(sheet) {
  const steps = sheet.next ?? [];
  return (
    steps.length > 0 &&
    h(
      'section',
      { class: 'next' },
      h('h3', {}, 'What to do next'),
      h('ol', {}, ...steps.map((n) => h('li', {}, n.text, n.source && h('span', { class: 'aside' }, ` (${n.source})`)))),
    )
  );
}

/**
 * What was given twice and does not agree.
 * @param {Sheet} sheet
 */
function conflicts(sheet) {
  const all = sheet.conflicts ?? [];
  return all.length > 0 && h('section', { class: 'verdict unsure' }, ...all.map((c) => h('p', {}, c.text)));
}

/**
 * @param {Sheet} sheet
 */
function notes(sheet) {
  const all = sheet.notes ?? [];
  return (
    all.length > 0 &&
    h('section', { class: 'notes' }, h('h3', {}, 'Notes'), h('ul', {}, ...all.map((n) => h('li', {}, n))))
  );
}

/**
 * A table; one with many columns gives each row a block of its own.
 * @param {string[]} heads
 * @param {(Node | string)[][]} rows the first cell of each names the row
 */
function table(heads, rows) {
  return h(
    'table',
    { class: heads.length > 4 ? 'blocks' : false },
    h('thead', {}, h('tr', {}, ...heads.map((t) => h('th', { scope: 'col' }, t)))),
    h(
      'tbody',
      {},
      ...rows.map(([name = '', ...cells]) =>
        h('tr', {}, h('th', { scope: 'row' }, name), ...cells.map((c, i) => h('td', { 'data-head': heads[i + 1], class: c instanceof Node && (c.textContent ?? '').length > 80 && 'long' }, c))),
      ),
    ),
  );
}

/** @param {string | undefined} text */
function symbol(text) {
  return text ? h('span', { class: 'symbol' }, ' ', text) : null;
}

/**
 * @param {(HTMLElement | false | null)[]} parts
 * @returns {HTMLElement[]}
 */
function present(parts) {
  return parts.filter((p) => p instanceof HTMLElement);
}
