// Run with: node --test site/

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { test } from 'node:test';

import { ALIKE, common } from './alike.js';

test('what one row has and others lack is offered, and nothing that differs or is measured', () => {
  const one = { name: 'front port', forward: '640 mm', stiffness: '115 N/mm', threadPitch: '1.5 mm', footGap: '0.02 mm' };
  assert.deepEqual(common('mounts', [one, { name: 'aft' }, {}]), [['threadPitch', '1.5 mm'], ['stiffness', '115 N/mm']]);
  assert.deepEqual(common('mounts', [one, { stiffness: '90 N/mm' }, {}]), [['threadPitch', '1.5 mm']]);
  assert.deepEqual(common('mounts', [one, one]), []);
  assert.deepEqual(common('mounts', [{}, {}]), []);
  assert.deepEqual(common('readings', [{ document: 'x' }, {}]), []);
});

test('every part that is copied is one of its list', async () => {
  const texts = await Promise.all(['boat-engine', 'boat-coupling', 'boat-proof'].map((name) => readFile(new URL(`../../schemas/${name}.schema.json`, import.meta.url), 'utf8')));
  const found = new Map();
  const look = (/** @type {any} */ schema) => {
    if (typeof schema !== 'object' || schema === null) return;
    for (const [name, inner] of Object.entries(schema)) {
      if (Object.hasOwn(ALIKE, name) && inner?.items?.properties) found.set(name, inner.items.properties);
      look(inner);
    }
  };
  for (const text of texts) look(JSON.parse(text));
  for (const [list, names] of Object.entries(ALIKE)) {
    for (const name of names) assert.ok(found.get(list)?.[name], `${list} has no ${name}`);
  }
});
