import assert from 'node:assert/strict';
import test from 'node:test';
import { here } from '../kit/asking.js';
import { Standing } from './standing.js';

/** A calculation that wants every row read, and three of them at least. */
const run = (/** @type {any} */ typed) => {
  const rows = typed.readings ?? [];
  const at = rows.findIndex((/** @type {any} */ row) => row.gap === undefined);
  if (at >= 0) return { ok: false, problems: [{ where: `/readings/${at}/gap`, what: 'missing', kind: 'missing' }] };
  if (rows.length < 3) return { ok: false, problems: [{ where: '/readings', what: 'too few', kind: 'wrong' }] };
  return { ok: true, sheet: { rows: rows.length } };
};
const four = (/** @type {(string | undefined)[]} */ gaps) => ({ readings: gaps.map((gap, i) => ({ clock: `${3 * i || 12} o'clock`, ...(gap && { gap }) })) });
const read = (/** @type {any} */ typed) => ({ readings: typed.readings.filter((/** @type {any} */ row) => row.gap) });

test('a place at which nothing was read does not hold the answer up', () => {
  const typed = four(['0.3', '0.3', undefined, '0.3']);
  const standing = new Standing(() => read(typed));
  const { sheet, problems } = here(standing.take(typed), run);
  assert.deepEqual([sheet, problems], [{ rows: 3 }, []]);
  assert.deepEqual(standing.used, read(typed));
});

test('too few places are told by the places that lack', () => {
  const typed = four(['0.3', undefined, undefined, '0.3']);
  const standing = new Standing(() => read(typed));
  const { sheet, problems } = here(standing.take(typed), run);
  assert.equal(sheet, null);
  assert.deepEqual(problems.map((p) => p.where), ['/readings/1/gap']);
});

test('the answer from before stands while something is wrong', () => {
  let typed = four(['0.3', '0.3', '0.4', '0.3']);
  const standing = new Standing(() => null);
  here(standing.take(typed), run);
  typed = four(['0.3', '0.3', undefined, '0.3']);
  const { sheet, old, without, held } = here(standing.take(typed), run);
  assert.deepEqual([sheet, old, without, held], [{ rows: 4 }, false, [], ['readings']]);
});

test('what did not change and no longer goes is left out, and the rest is answered anew', () => {
  const go = (/** @type {any} */ typed) =>
    typed.nut === undefined || typed.nut === typed.thread ? { ok: true, sheet: { of: typed.thread } } : { ok: false, problems: [{ where: '/nut', what: 'does not go with the rest' }] };
  const standing = new Standing(() => null);
  here(standing.take({ thread: 'coarse', nut: 'coarse' }), go);
  const { sheet, old, without, held } = here(standing.take({ thread: 'fine', nut: 'coarse' }), go);
  assert.deepEqual([sheet, old, without, held], [{ of: 'fine' }, false, ['nut'], []]);
});
