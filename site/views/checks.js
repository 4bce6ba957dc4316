// The book of checks: published values beside what this page calculates now.
// The page holds a few of each calculation; a file has them all.

import { inWords } from '../form/field.js';
import { button, h } from '../kit/dom.js';
import { unpack } from '../kit/unpack.js';

/** @typedef {import('../../wasm/marinecalc.js').CheckChapter} Chapter */
/** @typedef {import('../../wasm/marinecalc.js').Published} Published */
/** @typedef {{ counts: { chapter: string, rows: number, sources: number }[], rows: Published[], terms: string }} Digest */

/** @type {Promise<Digest> | undefined} unpacked once */
let packed;

/** @type {import('../app.js').View} */
export function showChecks(app, main) {
  const told = h('p', { role: 'status' });
  const list = h('div', {});
  const show = async (/** @type {Published[]} */ rows, /** @type {Digest['counts']} */ counts) => {
    const some = 30; // at a time, so that a request is answered soon
    /** @type {Map<string, Chapter>} */
    const chapters = new Map();
    for (let at = 0; at < rows.length; at += some) {
      told.textContent = `${at} of ${rows.length} calculated …`;
      const reply = await app.aside({ ask: 'checks', checks: rows.slice(at, at + some) });
      if (!reply.ok) return refuse(reply.problems.map(inWords).join(' '));
      for (const one of reply.checks) {
        const first = chapters.get(one.id);
        if (!first) chapters.set(one.id, one);
        else {
          first.checks.push(...one.checks);
          first.off += one.off;
          first.farthest = Math.max(first.farthest, one.farthest);
        }
      }
    }
    const all = counts.reduce((sum, c) => sum + c.rows, 0);
    const off = [...chapters.values()].reduce((sum, c) => sum + c.off, 0);
    told.textContent = `${rows.length} of ${all} checks calculated, ${off} not met. Version ${app.contents.version}.`;
    list.replaceChildren(...[...chapters.values()].map((c) => chapter(c, counts.find((n) => `tables/${n.chapter}` === c.id || n.chapter === c.id))));
  };
  const refuse = (/** @type {string} */ why) => {
    told.textContent = why;
    list.replaceChildren();
  };
  const file = h('input', { type: 'file', accept: '.json,application/json', hidden: true, 'aria-label': 'File of checks' });
  file.addEventListener('change', async () => {
    const chosen = file.files?.[0];
    file.value = '';
    if (!chosen) return;
    const rows = rowsOf(await chosen.text());
    if (rows) await show(rows, [{ chapter: '', rows: rows.length, sources: 0 }]);
    else refuse(`${chosen.name} is no file of checks. It comes with a release, and from: marinecalc checks --rows`);
  });
  const terms = h('pre', { class: 'terms' });
  main.append(
    h('h1', {}, 'Checks against published values'),
    h('p', { class: 'lead' }, 'What standards, handbooks and worked examples say, beside what this page calculates now.'),
    h(
      'div',
      { class: 'tools' },
      button('Open checks.json, which has all', () => file.click()),
      file,
      location.protocol.startsWith('http') && h('a', { href: 'checks.json', download: 'checks.json' }, 'Save checks.json'),
    ),
    told,
    list,
    h('h2', {}, 'Licence'),
    h('details', {}, h('summary', {}, 'MIT, and the terms of what it is built with'), terms),
  );
  packed ??= unpack('checks', 'application/json').json();
  packed
    .then((all) => {
      terms.textContent = all.terms;
      return show(all.rows, all.counts);
    })
    .catch((error) => refuse(String(error)));
  return 'Checks';
}

/**
 * The rows of a file of checks; none where it is another file.
 * @param {string} text
 * @returns {Published[] | undefined}
 */
function rowsOf(text) {
  try {
    const { rows } = JSON.parse(text);
    return Array.isArray(rows) && rows.length > 0 ? rows : undefined;
  } catch {
    return undefined;
  }
}

/**
 * One calculation or table, folded.
 * @param {Chapter} shown
 * @param {{ rows: number, sources: number } | undefined} whole how many there are of it
 */
function chapter({ title, checks, off, farthest }, whole) {
  const sources = new Set(checks.map((c) => c.source)).size;
  const count = whole ? `${checks.length} of ${whole.rows}, ${sources} of ${whole.sources} sources` : `${checks.length}, ${sources} sources`;
  const worst = farthest > 0 ? `the farthest off by ${+(100 * farthest).toPrecision(2)} % of what is allowed` : 'none is off';
  const fold = h(
    'details',
    { open: off > 0 },
    h('summary', {}, `${title}: ${count}; `, off > 0 ? h('strong', { class: 'wrong' }, `${off} NOT MET`) : 'all met', `; ${worst}`),
  );
  const draw = () => {
    if (fold.open && fold.childElementCount === 1)
      fold.append(
        ...checks.flatMap((c) => [
          h('p', {}, c.source),
          h('ul', {}, ...(c.values ?? []).map(line), c.problem && h('li', { class: 'wrong' }, `NOT MET: ${c.problem}`)),
        ]),
      );
  };
  fold.addEventListener('toggle', draw);
  draw();
  return fold;
}

/** @param {import('../../wasm/marinecalc.js').PublishedValue} v */
function line({ title, published, computed, difference, allowed, holds }) {
  const off = difference ? `, off by ${difference} (allowed ${allowed})` : '';
  return h('li', { class: holds ? null : 'wrong' }, `${holds ? '' : 'NOT MET: '}${title}: published ${published}, calculated ${computed}${off}`);
}
