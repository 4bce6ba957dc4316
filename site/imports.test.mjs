// Imports between the folders run one way: each knows those before it alone.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { test } from 'node:test';

const MAY_IMPORT = {
  kit: [],
  store: ['kit'],
  form: ['kit', 'store'],
  sheet: ['kit', 'store'],
  views: ['kit', 'store', 'form', 'sheet'],
};

test('imports run one way', () => {
  let seen = 0;
  for (const [folder, allowed] of Object.entries(MAY_IMPORT)) {
    const place = new URL(`./${folder}/`, import.meta.url);
    for (const file of readdirSync(place).filter((name) => name.endsWith('.js'))) {
      const text = readFileSync(new URL(file, place), 'utf8');
      for (const [, path = ''] of text.matchAll(/^(?:import|export) .* from '(.*)';$/gm)) {
        const to = path.match(/^\.\.\/(\w+)\//)?.[1];
        assert.ok(path.startsWith('./') || allowed.includes(to), `${folder}/${file} imports ${path}`);
        seen++;
      }
    }
  }
  assert.ok(seen > 40, `only ${seen} imports were read`);
});
