// node --test site/kit/one-run.test.mjs

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { oneRun } from './one-run.js';

/** A calculator that notes what it was asked. */
function noting() {
  /** @type {string[]} */
  const asked = [];
  return {
    asked,
    /** @param {any} request */
    call(request) {
      asked.push(request.ask);
      if (request.boat?.bad) return { ok: false, problems: [] };
      const still = request.boat?.still;
      return { ok: true, warnings: ['w'], survey: { boat: request.boat?.name, parts: [{ part: 'gland', of: request.boat?.name }], ...(still && { still }) } };
    },
  };
}

test('parts and survey of one boat are one run, in either order', () => {
  for (const order of [['parts', 'survey'], ['survey', 'parts']]) {
    const calculator = noting();
    const ask = oneRun(calculator);
    const replies = Object.fromEntries(order.map((what) => [what, ask({ ask: what, boat: { name: 'Tern', still: 'it is loose' }, units: 'metric' })]));
    assert.deepEqual(calculator.asked, ['survey']);
    assert.equal(replies.survey.survey.boat, 'Tern');
    assert.deepEqual(replies.parts, { ok: true, warnings: ['w'], parts: { parts: [{ part: 'gland', of: 'Tern' }], still: 'it is loose' } });
  }
});

test('another boat, or other units, are run anew', () => {
  const calculator = noting();
  const ask = oneRun(calculator);
  ask({ ask: 'parts', boat: { name: 'Tern' }, units: 'metric' });
  const other = ask({ ask: 'parts', boat: { name: 'Ternlet' }, units: 'metric' });
  assert.equal(other.parts.parts[0].of, 'Ternlet');
  assert.equal('still' in other.parts, false);
  ask({ ask: 'survey', boat: { name: 'Ternlet' }, units: 'us' });
  assert.equal(calculator.asked.length, 3);
});

test('a refusal is handed on and not kept, and other asks pass', () => {
  const calculator = noting();
  const ask = oneRun(calculator);
  assert.equal(ask({ ask: 'parts', boat: { bad: true } }).ok, false);
  assert.equal(ask({ ask: 'survey', boat: { bad: true } }).ok, false);
  ask({ ask: 'readings', boat: {} });
  assert.deepEqual(calculator.asked, ['survey', 'survey', 'readings']);
});
