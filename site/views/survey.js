// The boat in hand: the whole of it in a dozen lines, what was found, what to
// measure next, what is close, and every sheet when it is opened.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { bound, button, h } from '../kit/dom.js';
import { hazards } from '../sheet/answer.js';
import { lateFold } from '../sheet/folds.js';
import { headline, work } from '../sheet/sheet.js';
import { badge, verdictCard } from '../sheet/verdicts.js';
import { forFile, saveFile } from '../store/files.js';
import { keptMarks, marksKey } from '../store/marks.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend } from '../store/shelf.js';
import { isLong } from './asks.js';
import { keepStill } from './home.js';
import { begunOn, begunWork } from './work.js';

/** @typedef {import('../../wasm/marinecalc.js').Finding} Finding */
/** @typedef {import('../../wasm/marinecalc.js').Survey} Survey */

/** @type {import('../app.js').View} */
export function showSurvey(app, main) {
  const name = nameOf(inHand().boat);
  const boat = toSend(inHand().boat) ?? { name };
  const title = `Survey: ${name}`;
  const place = h('div', { class: 'survey' }, h('p', {}, 'Every calculation is being run…'));
  main.append(h('h1', {}, title), place);
  // What is begun and how the parts stood are there at once; the rest comes when it is found.
  const begin = h('div', {}, ...(isLong(boat) ? [] : [begunWork(app)]));
  const kept = keptMarks(marksKey(boat, units(), app.build));
  if (kept) place.append(partsAtOnce(kept));
  place.append(begin);
  const all = app.aside({ ask: 'survey', boat, units: units() });
  const work = app.aside({ ask: 'procedures', boat }); // asked last, and so answered first
  void work.then((reply) => begin.replaceChildren(begunWork(app, begunOn(app, reply))));
  void Promise.all([all, work]).then(([reply, work]) => {
    if (place.isConnected) place.replaceWith(...present(surveyOf(app, boat, reply, begunOn(app, work))));
  });
  return title;
}

/**
 * How the parts stand, a line each.
 * @param {import('../../wasm/marinecalc.js').PartsState} state
 */
function partsAtOnce(state) {
  return h(
    'div',
    {},
    keepStill(state),
    h('ul', { class: 'glance' }, ...state.parts.map((p) => h('li', {}, h('p', {}, badge(p.word, p.reads), ' ', h('a', { href: `#/part/${p.part}` }, p.title))))),
  );
}

/**
 * @param {import('../app.js').App} app
 * @param {import('../../wasm/marinecalc.js').Json} boat
 * @param {import('../../wasm/marinecalc.js').SurveyReply | import('../../wasm/marinecalc.js').Refusal} reply
 * @param {import('../../wasm/marinecalc.js').ListedWork[]} begun
 * @returns {(HTMLElement | string | false | null)[]}
 */
function surveyOf(app, boat, reply, begun) {
  if (!reply.ok) return [warningList(reply, 'h2'), h('h2', {}, 'To correct'), wrongList(reply.problems), h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat'))];
  const name = nameOf(boat);
  const { survey } = reply;
  const { findings } = survey;
  /** @param {...string} words */
  const of = (...words) => findings.filter(({ verdict }) => words.includes(verdict.word));
  return [
      warningList(reply, 'h2'),
      inShort(survey),
      h(
        'div',
        { class: 'tools' },
        button('Print the survey', () => print()),
        button('Save the job sheet', () => {
          const sheet = app.calculator.call({ ask: 'jobsheet', boat, units: units() });
          if (sheet.ok) saveFile(`${forFile(name)}-job-sheet.html`, 'text/html', sheet.page);
        }),
        button('Save the torque card', () => {
          const card = app.calculator.call({ ask: 'torque-card', boat, units: units() });
          if (card.ok) saveFile(`${forFile(name)}-torque-card.html`, 'text/html', card.page);
        }),
      ),
      ...survey.faults.map((fault) =>
        h('section', { class: 'lacking' }, h('h2', {}, link(fault), ': to put right'), wrongList(fault.problems)),
      ),
      found(survey),
      measure(survey),
      list('Close to a limit', of('near the limit')),
      list('Outside or about a guide', of('outside the guide', 'about the guide')),
      ...hazards(survey.cautions ?? [], 'survey'),
      begunWork(app, begun),
      late('Not enough to tell', of('cannot tell')),
      late('OK or inside the guide', of('within', 'inside the guide')),
      survey.open.length > 0 &&
        lateFold(`Limits without a reading (${survey.open.length})`, () => survey.open.map(({ verdict }) => verdictCard(verdict))),
      survey.missing.length > 0 &&
        lateFold(`Sheets that lack inputs (${survey.missing.length})`, () => survey.missing.map(lacking)),
      h(
        'section',
        { class: 'paper unprinted', 'aria-labelledby': 'sheets-title' },
        h('h2', { id: 'sheets-title' }, 'Every sheet'),
        survey.sheets.length === 0 && h('p', {}, 'No sheet can be calculated yet.'),
        ...survey.sheets.map((sheet) =>
          lateFold(h('span', { class: 'told' }, h('strong', {}, sheet.title), ` ${headline(sheet)}`), () => [
            h('div', { class: 'sheet' }, ...work(sheet)),
            h('p', {}, link({ ...sheet, title: `${sheet.title}: change what is known` })),
          ]),
        ),
      ),
  ];
}

/** @param {Survey} survey */
function inShort({ summary }) {
  return h(
    'dl',
    { class: 'in-short', 'aria-label': 'The boat in short' },
    ...summary.flatMap(({ code, head, text }) => [
      h('dt', {}, ['still', 'found', 'seen', 'measured', 'computed'].includes(code) ? badge('beyond', head) : head),
      h('dd', {}, text),
    ]),
  );
}

const HEADS = { still: 'Keep the shaft still', cause: 'Fault found', look: 'Seen', wear: 'Seen', measured: 'Over a limit, measured', computed: 'Over a limit, calculated' };

/**
 * What is wrong and what does not agree, how one thing leads to another, and
 * what was decided.
 * @param {Survey} survey
 */
function found({ found: all, nothing, disagree, chains, choice }) {
  if (all.length + disagree.length + chains.length === 0 && !nothing && !choice) return false;
  return h(
    'section',
    {},
    h('h2', {}, 'Found'),
    nothing && h('p', {}, nothing),
    h(
      'ul',
      { class: 'glance' },
      ...all.map((f) =>
        h(
          'li',
          {},
          h('p', {}, badge('beyond', HEADS[/** @type {keyof typeof HEADS} */ (f.kind)])),
          h('p', {}, f.limit ? f.text : h('strong', {}, f.title), !f.limit && ` ${f.text}`),
          h('p', {}, link({ calculation: f.calculation, title: f.sheet })),
        ),
      ),
      ...disagree.map((d) =>
        h(
          'li',
          {},
          h('p', {}, badge('cannot tell', 'Does not agree')),
          h('p', {}, d.conflict.text),
          h('p', {}, d.calculation ? link({ calculation: d.calculation, title: d.sheet ?? '' }) : h('a', { href: '#/boat' }, 'The boat file')),
        ),
      ),
    ),
    chains.length > 0 && h('ul', {}, ...chains.map((line) => h('li', {}, line))),
    choice && h('p', {}, choice.text),
  );
}

/**
 * What to measure next, by what that settles.
 * @param {Survey} survey
 */
function measure({ measure: all }) {
  const first = 6;
  /** @param {Survey['measure'][number]} m */
  const item = (m) => h('li', {}, h('a', { href: `#/sheet/${m.input.split('/')[0]}` }, m.title), m.gauge && ` (${m.gauge})`, `. ${m.gain}`);
  return (
    all.length > 0 &&
    h(
      'section',
      {},
      h('h2', {}, 'Measure, look up or choose next'),
      h('ol', {}, ...all.slice(0, first).map(item)),
      all.length > first && lateFold(`${all.length - first} more`, () => [h('ul', {}, ...all.slice(first).map(item))]),
    )
  );
}

/**
 * @param {string} title
 * @param {Finding[]} some
 */
function list(title, some) {
  return some.length > 0 && h('section', {}, h('h2', {}, title), glance(some));
}

/**
 * What is listed only when asked for.
 * @param {string} title
 * @param {Finding[]} some
 */
function late(title, some) {
  return some.length > 0 && lateFold(`${title} (${some.length})`, () => [glance(some)]);
}

/** @param {Finding[]} some */
function glance(some) {
  return h(
    'ul',
    { class: 'glance' },
    ...some.map(({ calculation, sheet, verdict }) =>
      h(
        'li',
        {},
        h('p', {}, badge(verdict.word, verdict.reads)),
        h('p', {}, bound(verdict.sentence)),
        h('p', {}, link({ calculation, title: sheet })),
      ),
    ),
  );
}

/** @param {import('../../wasm/marinecalc.js').Missing} missing */
function lacking({ calculation, title, needs }) {
  return h(
    'section',
    { class: 'lacking' },
    h('h2', {}, link({ calculation, title }), ': not known yet'),
    h('dl', {}, ...(needs ?? []).flatMap((need) => [h('dt', {}, need.title), h('dd', {}, need.how, need.gauge && ` Gauge: ${need.gauge}.`)])),
  );
}

/** @param {import('../../wasm/marinecalc.js').Problem[]} problems */
function wrongList(problems) {
  return h('ul', { class: 'wrong-list' }, ...problems.map((p) => h('li', {}, inWords(p))));
}

/** @param {{ calculation: string, title: string }} to */
function link({ calculation, title }) {
  return h('a', { href: `#/sheet/${encodeURIComponent(calculation)}` }, title);
}

/**
 * @param {(HTMLElement | string | false | null)[]} parts
 * @returns {HTMLElement[]}
 */
function present(parts) {
  return parts.filter((p) => p instanceof HTMLElement);
}
