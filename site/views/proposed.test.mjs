import assert from 'node:assert/strict';
import { test } from 'node:test';

import { proposed } from './proposed.js';

/** A sheet that proposes a look and a quick question that tell so much. */
function sheet(look, quick, results) {
  const columns = [{ name: 'evidence' }, { name: 'bits' }];
  const table = (name, id, bits) => ({ name, columns, rows: [{ cells: [{ text: id }, { text: '', si: bits }] }] });
  return { tables: [table('nextChecks', 'look', look), table('quickQuestions', 'quick', quick)], results };
}

const found = { name: 'found', text: 'Packing hard' };
const leads = { name: 'probability', si: 0.6 };
const settle = { name: 'confirmEvidence', text: 'look' };

test('a weak look does not stand before a quick question that tells more', () => {
  assert.deepEqual(proposed(sheet(0.04, 0.17, [found])), ['quick', 'look']);
  assert.deepEqual(proposed(sheet(0.04, 0.17, [leads])), ['quick', 'look']);
});

test('a look that tells as much, or settles what leads, goes first', () => {
  assert.deepEqual(proposed(sheet(0.2, 0.17, [found])), ['look', 'quick']);
  assert.deepEqual(proposed(sheet(0.04, 0.17, [leads, settle])), ['look', 'quick']);
  assert.deepEqual(proposed(sheet(0.2, 0.17, [settle])), ['quick', 'look']);
});
