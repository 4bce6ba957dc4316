// The boats kept in this browser.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { unlike } from './shelf.js';

test('two boats of one name are told apart', () => {
  assert.equal(unlike('Petrel', ['Dipper']), 'Petrel');
  assert.equal(unlike('Petrel', ['Petrel', 'Petrel (2)', 'Dipper']), 'Petrel (3)');
});
