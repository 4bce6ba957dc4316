// What a value is by its schema.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { choices } from './values.js';

test('threads stand by their size, of one size the coarse before the fine', () => {
  const sorted = ['1/4-20 UNC', '1/4-28 UNF', '3/8-16 UNC', '3/8-24 UNF', '1-8 UNC', '1-12 UNF', '1-14 UNS', '1-1/8-7 UNC', '1-3/4-5 UNC', '2-4.5 UNC', 'M8 × 1.25 (coarse)', 'M8 × 1 (fine)', 'M22 × 2.5 (coarse)', 'M24 × 3 (coarse)', 'M24 × 2 (fine)', 'another'];
  const mixed = [...sorted].reverse().map((name) => ({ pick: name, name }));
  assert.deepEqual(choices({ rows: 'threads' }, { threads: mixed }).map((c) => c.words), sorted);
  assert.deepEqual(choices({ rows: 'others' }, { others: mixed }).map((c) => c.words), [...sorted].reverse());
});
