// Run with: node --test site/

import assert from 'node:assert/strict';
import { test } from 'node:test';

import { meantBy } from './seek.js';

const picks = ['ISO 898-1 class 10.9', 'ISO 898-1 class 8.8', 'SAE J429 grade 8.2', 'SAE J429 grade 8', 'ASTM F593E, group 2 (316) annealed', 'M10 × 1.5', 'Zinc plated, dry'];

test('a pick is found by any of its words, whole ones first', () => {
  const found = (/** @type {string} */ typed) => picks[meantBy(picks, typed)];
  assert.equal(found('8.8'), 'ISO 898-1 class 8.8');
  assert.equal(found('grade 8'), 'SAE J429 grade 8');
  assert.equal(found('Grade 8.'), 'SAE J429 grade 8.2');
  assert.equal(found('316'), 'ASTM F593E, group 2 (316) annealed');
  assert.equal(found('M10x1.5'), 'M10 × 1.5');
  assert.equal(found('m10 × 1.5'), undefined, 'what begins so is found by the browser');
  assert.equal(found('plated'), 'Zinc plated, dry');
  assert.equal(found('dry zinc'), 'Zinc plated, dry');
  assert.equal(found('x 1.5'), 'M10 × 1.5');
  assert.equal(found('zinc'), undefined, 'what begins so is found by the browser');
  assert.equal(found('brass'), undefined);
  assert.equal(found('(+'), undefined);
  assert.equal(found(' '), undefined);
});
