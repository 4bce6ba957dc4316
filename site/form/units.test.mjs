// The unit of a bare number.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { reader, unitFor } from './units.js';

test('a typed quantity is read by the calculator, once; what it cannot read stays', () => {
  /** @type {any[]} */
  const asked = [];
  const answers = /** @type {any} */ ({ 12: { ok: true, text: '12 mm', si: 0.012 }, wide: { ok: false, problems: [] } });
  const calculator = /** @type {any} */ ({
    call(/** @type {any} */ request) {
      asked.push(request);
      return answers[request.text];
    },
  });
  const read = reader(calculator);
  const length = { quantity: 'length' };
  for (let i = 0; i < 2; i++) {
    assert.equal(read(' 12 ', length, 'mm'), '12 mm');
    assert.equal(read('wide', length, 'mm'), 'wide');
  }
  assert.deepEqual(asked, [
    { ask: 'quantity', quantity: 'length', text: '12', unit: 'mm' },
    { ask: 'quantity', quantity: 'length', text: 'wide', unit: 'mm' },
  ]);
  for (const [text, schema, unit] of /** @type {[string, any, string][]} */ ([['', length, 'mm'], ['0.2', length, ''], ['12', {}, 'mm']])) {
    assert.equal(read(text, schema, unit), text);
  }
  assert.equal(asked.length, 2, 'nothing to read is not asked for');
});

test('the unit follows the system in force', () => {
  const schema = { units: ['mm', 'in'] };
  assert.equal(unitFor(schema, 'metric'), 'mm');
  assert.equal(unitFor(schema, 'us'), 'in');
  assert.equal(unitFor(schema, 'both'), 'mm');
  assert.equal(unitFor({}, 'us'), '');
});
