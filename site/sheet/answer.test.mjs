// The verdict that decides how an answer is read.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { leadVerdict } from './answer.js';

const sheet = (/** @type {[string, string, string][]} */ ...verdicts) =>
  /** @type {any} */ ({ results: [{ name: 'gap' }, { name: 'worst' }, { name: 'closure' }], verdicts: verdicts.map(([limit, on, word]) => ({ limit, on, word })) });

test('that readings agree is no OK of what was read', () => {
  const closes = /** @type {[string, string, string]} */ (['coupling-closes', 'closure', 'within']);
  assert.equal(leadVerdict(sheet(closes, ['guide', 'worst', 'inside the guide']))?.limit, 'guide');
  assert.equal(leadVerdict(sheet(closes)), undefined); // nothing was judged
  assert.equal(leadVerdict(sheet(['coupling-closes', 'closure', 'beyond'], ['guide', 'worst', 'inside the guide']))?.limit, 'coupling-closes');
  assert.equal(leadVerdict(sheet(['maker', 'worst', 'within'], ['guide', 'gap', 'inside the guide']))?.limit, 'maker'); // a limit goes before a guide
});
