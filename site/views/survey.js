// Everything the boat in hand allows to be calculated, most urgent first, and
// what the rest lacks.

import { inWords } from '../form/field.js';
import { warningList } from '../form/problems.js';
import { button, h } from '../kit/dom.js';
import { cautionList } from '../sheet/cautions.js';
import { folds } from '../sheet/folds.js';
import { headline, work } from '../sheet/sheet.js';
import { badge, verdictCard } from '../sheet/verdicts.js';
import { forFile, saveFile } from '../store/files.js';
import { units } from '../store/settings.js';
import { inHand, nameOf, toSend } from '../store/shelf.js';
import { begunWork } from './work.js';

/** @typedef {import('../../wasm/marinecalc.js').Finding} Finding */

const fold = folds('survey');

/** @type {import('../app.js').View} */
export function showSurvey(app, main) {
  const name = nameOf(inHand().boat);
  const boat = toSend(inHand().boat) ?? { name };
  const title = `Survey: ${name}`;
  const reply = app.calculator.call({ ask: 'survey', boat, units: units() });
  main.append(
    h('h1', {}, title),
    h('p', { class: 'lead' }, 'Every sheet that the boat’s figures and readings allow, and what is missing for the others.'),
    warningList(reply, 'h2'),
  );
  if (!reply.ok) {
    main.append(
      h('h2', {}, 'To put right'),
      wrongList(reply.problems),
      h('p', {}, h('a', { href: '#/boat' }, 'Look at the boat')),
    );
    return title;
  }
  const { survey } = reply;
  main.append(
    ...present([
      atAGlance(survey.findings),
      h(
        'div',
        { class: 'tools' },
        button('Print the survey', () => print()),
        button('Save the job sheet', () => {
          const sheet = app.calculator.call({ ask: 'jobsheet', boat, units: units() });
          if (sheet.ok) saveFile(`${forFile(name)}-job-sheet.html`, 'text/html', sheet.page);
        }),
      ),
      ...survey.faults.map((fault) =>
        h('section', { class: 'lacking' }, h('h2', {}, link(fault), ': to put right'), wrongList(fault.problems)),
      ),
      findings(survey.findings),
      awaited(survey),
      cautionList(survey.cautions ?? []),
      list('How one thing leads to another', survey.chains ?? []),
      ...survey.missing.map(lacking),
      open(survey.open),
      begunWork(app),
      h(
        'section',
        { class: 'paper', 'aria-labelledby': 'sheets-title' },
        h('div', { class: 'paper-head' }, h('h2', { id: 'sheets-title' }, 'Every sheet'), h('p', { class: 'of-boat' }, name)),
        survey.sheets.length === 0 && h('p', {}, 'No sheet can be calculated yet.'),
        ...survey.sheets.map((sheet) =>
          fold(
            `${sheet.title}. ${headline(sheet)}`,
            h('div', { class: 'sheet' }, ...work(sheet)),
            h('p', {}, link({ ...sheet, title: `${sheet.title}: change what is known` })),
          ),
        ),
      ),
    ]),
  );
  return title;
}

/**
 * How many verdicts there are of each kind, in one line.
 * @param {Finding[]} all
 */
function atAGlance(all) {
  const words = [...new Set(all.map(({ verdict }) => verdict.reads))]; // in order of urgency, as the findings are
  const told = words.map((reads) => `${all.filter(({ verdict }) => verdict.reads === reads).length} ${reads}`);
  return told.length > 0 && h('p', { class: 'lead' }, h('strong', {}, told.join(', ')), '. What can hurt while you work stands below the list.');
}

/**
 * The verdicts, most urgent first; those within their limits folded away.
 * @param {Finding[]} all
 */
function findings(all) {
  const within = all.filter(({ verdict }) => verdict.word === 'within');
  const others = all.filter(({ verdict }) => verdict.word !== 'within');
  return (
    all.length > 0 &&
    h(
      'section',
      {},
      h('h2', {}, 'What the limits say, most urgent first'),
      others.length > 0 && glance(others),
      within.length > 0 && fold(`${within[0]?.verdict.reads} (${within.length})`, glance(within)),
    )
  );
}

/**
 * What to type so that more verdicts can be drawn.
 * @param {import('../../wasm/marinecalc.js').Survey} survey
 */
function awaited({ awaited, sheets }) {
  /** @param {string} calculation */
  const to = (calculation) => link({ calculation, title: sheets.find((s) => s.calculation === calculation)?.title ?? calculation });
  return (
    awaited.length > 0 &&
    h(
      'section',
      {},
      h('h2', {}, 'Figures that would settle most'),
      h('p', {}, 'Nobody confirmed these. Type the maker’s figure, or measure it: the first one settles most.'),
      h(
        'ul',
        {},
        ...awaited.map(({ title, verdicts, sheets: on }) =>
          h('li', {}, `${title}: ${verdicts === 1 ? 'one verdict waits' : `${verdicts} verdicts wait`} for it. `, ...on.flatMap((c, i) => [i > 0 && ', ', to(c)])),
        ),
      ),
    )
  );
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
        h('p', {}, verdict.sentence),
        h('p', {}, link({ calculation, title: sheet })),
      ),
    ),
  );
}

/**
 * @param {string} title
 * @param {string[]} lines
 */
function list(title, lines) {
  return lines.length > 0 && h('section', {}, h('h2', {}, title), h('ul', {}, ...lines.map((line) => h('li', {}, line))));
}

/** @param {import('../../wasm/marinecalc.js').Missing} missing */
function lacking({ calculation, title, needs }) {
  return h(
    'section',
    { class: 'lacking' },
    h('h2', {}, link({ calculation, title }), ': not known yet'),
    h(
      'dl',
      {},
      ...(needs ?? []).flatMap((need) => [
        h('dt', {}, need.title),
        h('dd', {}, need.how, need.gauge && ` Gauge: ${need.gauge}.`),
      ]),
    ),
  );
}

/** @param {Finding[]} some */
function open(some) {
  return (
    some.length > 0 &&
    fold(`Limits without a reading (${some.length})`, ...some.map(({ verdict }) => verdictCard(verdict)))
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
 * @param {(HTMLElement | false | null)[]} parts
 * @returns {HTMLElement[]}
 */
function present(parts) {
  return parts.filter((p) => p instanceof HTMLElement);
}
