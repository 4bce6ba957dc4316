// Run with: node --test site/

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { lenient } from './lenient.js';

test('leaveOut goes with a boat to just those asks that take it', async () => {
  const schema = JSON.parse(await readFile(new URL('../../schemas/request.schema.json', import.meta.url), 'utf8'));
  let tried = 0;
  for (const { if: asked, then } of schema.allOf) {
    const names = then?.propertyNames?.enum ?? [];
    if (!names.includes('boat')) continue;
    const ask = asked.properties.ask;
    for (const name of ask.enum ?? [ask.const]) {
      tried++;
      assert.equal('leaveOut' in lenient({ ask: name, boat: {} }), names.includes('leaveOut'), name);
    }
  }
  assert.ok(tried > 15, `${tried} asks`);
  assert.ok(!('leaveOut' in lenient({ ask: 'run' })), 'without a boat');
});
