// Run with: node --test site/

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { SIGNS } from './verdicts.js';

test('every word of a verdict has a sign, and no two words the same', async () => {
  const schema = JSON.parse(await readFile(new URL('../../schemas/sheet.schema.json', import.meta.url), 'utf8'));
  /** @type {Map<string, string>} */
  const words = new Map();
  for (const word of schema.$defs.word.enum) {
    const drawn = SIGNS[word];
    assert.ok(drawn, word);
    const shape = drawn.outline + drawn.mark;
    assert.equal(words.get(shape), undefined, `${word} has the sign of ${words.get(shape)}`);
    words.set(shape, word);
  }
  assert.ok(words.size > 6);
});
