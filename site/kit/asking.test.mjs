import assert from 'node:assert/strict';
import test from 'node:test';
import { aside, had, here, within } from './asking.js';

/** Asks twice, the second time by the first reply. */
function* doubled(/** @type {number} */ n) {
  const once = /** @type {number} */ (yield n);
  return /** @type {number} */ (yield once) + 1;
}
const twice = (/** @type {number} */ n) => 2 * n;

test('the same work comes out the same here and aside', async () => {
  assert.equal(here(doubled(3), twice), 13);
  assert.equal(await aside(doubled(3), async (n) => twice(n)), 13);
});

test('what fails aside is told to who waits', async () => {
  await assert.rejects(aside(doubled(3), () => Promise.reject(new Error('no worker'))), /no worker/);
});

test('what was had before is given to the same request only, a copy each time', async () => {
  const asked = /** @type {any[]} */ ([]);
  /** @returns {Generator<any, void, any>} */
  function* first() {
    const blank = yield { ask: 'blank', of: 'x' };
    if (blank.ok) yield { ask: 'run', input: { a: 1 } };
  }
  const replies = await had(first(), async (request) => {
    asked.push(request.ask);
    return { ok: true, of: request.ask };
  });
  assert.deepEqual(asked, ['blank', 'run']);
  assert.equal(replies({ ask: 'run', input: { a: 2 } }), undefined);
  assert.deepEqual(replies({ ask: 'run', input: { a: 1 } }), { ok: true, of: 'run' });
  replies({ ask: 'run', input: { a: 1 } }).of = 'spoilt';
  assert.deepEqual(replies({ ask: 'run', input: { a: 1 } }), { ok: true, of: 'run' });
  assert.deepEqual(replies({ ask: 'blank', of: 'x' }), { ok: true, of: 'blank' });
});

test('what does not come in time is not waited for', async () => {
  assert.equal(await within(Promise.resolve(7), 1000), 7);
  assert.equal(await within(new Promise(() => {}), 5), undefined);
  assert.equal(await within(undefined, 1000), undefined);
  assert.equal(await within(Promise.reject(new Error('no')), 1000), undefined);
});
