// Smoke test of the loader in Node: node --test wasm/
// Builds the module itself, so it needs the Go toolchain.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { start } from './marinecalc.js';

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'marinecalc-'));
after(() => rmSync(folder, { recursive: true }));
const file = join(folder, 'marinecalc.wasm');
execFileSync('go', ['run', '../cmd/page', '-module', file], { cwd: here });
const module = await WebAssembly.compile(readFileSync(file));

test('starts from bytes and from a compiled module', async () => {
  for (const source of [readFileSync(file), module]) {
    const calculator = await start(source);
    assert.equal(calculator.version, 2);
    const reply = calculator.call({ ask: 'contents' });
    assert.ok(reply.ok);
    assert.ok(reply.calculations.length > 0);
  }
});

test('bad requests come back as problems', async () => {
  const calculator = await start(module);
  for (const request of [{}, [], 'text', 3, null, { ask: 'no such thing' }, { ask: 'run', calculation: 7 }]) {
    const reply = calculator.call(/** @type {any} */ (request));
    assert.equal(reply.ok, false, JSON.stringify(request));
    assert.ok(reply.problems.length > 0);
  }
});

test('a request above the cap is refused and the next one is answered', async () => {
  const calculator = await start(module);
  const reply = calculator.call(/** @type {any} */ ({ ask: 'contents', filler: 'x'.repeat(9 << 20) }));
  assert.equal(reply.ok, false);
  assert.ok(calculator.call({ ask: 'contents' }).ok);
});

test('a request that cannot be written as JSON is refused and the instance stays', async (t) => {
  const made = t.mock.method(WebAssembly, 'instantiate');
  const calculator = await start(module);
  const cycle = /** @type {any} */ ({ ask: 'contents' });
  cycle.boat = cycle;
  for (const request of [{ ask: 'contents', boat: 10n }, cycle]) {
    const reply = calculator.call(/** @type {any} */ (request));
    assert.equal(reply.ok, false);
    assert.match(reply.problems[0].what, /cannot be written as JSON/);
    assert.ok(calculator.call({ ask: 'contents' }).ok, 'the next request is answered at once');
  }
  assert.equal(made.mock.callCount(), 1, 'instances made');
});

test('survives growth of memory', async () => {
  const calculator = await start(module);
  for (let i = 0; i < 3; i++) {
    calculator.call(/** @type {any} */ ({ ask: 'contents', filler: 'é'.repeat(1 << 20) }));
    assert.ok(calculator.call({ ask: 'contents' }).ok);
  }
});

test('a trap drops the instance and a new one takes its place', async (t) => {
  t.mock.method(console, 'error', () => {});
  const made = t.mock.method(WebAssembly, 'instantiate');
  const calculator = await start(trapping());
  assert.equal(made.mock.callCount(), 1);
  for (const count of [2, 3]) {
    assert.equal(calculator.call({ ask: 'contents' }).ok, false);
    assert.equal(calculator.call({ ask: 'contents' }).ok, false, 'asked before the new instance stands');
    await calculator.ready();
    assert.equal(made.mock.callCount(), count, 'instances made');
  }
});

// A module with the calculator's exports whose call is one instruction: unreachable.
function trapping() {
  const name = (/** @type {string} */ s) => [s.length, ...Buffer.from(s)];
  const section = (/** @type {number} */ id, /** @type {number[]} */ body) => [id, body.length, ...body];
  const i32 = 0x7f;
  const i64 = 0x7e;
  return new Uint8Array([
    ...[0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0],
    // types: () ; () -> i32 ; i32 -> i32 ; i32 -> () ; i32 i32 -> i64
    ...section(1, [5, 0x60, 0, 0, 0x60, 0, 1, i32, 0x60, 1, i32, 1, i32, 0x60, 1, i32, 0, 0x60, 2, i32, i32, 1, i64]),
    ...section(3, [5, 0, 1, 2, 3, 4]),
    ...section(5, [1, 0, 1]),
    ...section(7, [
      6,
      ...[...name('memory'), 2, 0],
      ...[...name('_initialize'), 0, 0],
      ...[...name('version'), 0, 1],
      ...[...name('alloc'), 0, 2],
      ...[...name('release'), 0, 3],
      ...[...name('call'), 0, 4],
    ]),
    // bodies: nothing ; 2 ; 8 ; nothing ; unreachable
    ...section(10, [5, 2, 0, 0x0b, 4, 0, 0x41, 2, 0x0b, 4, 0, 0x41, 8, 0x0b, 2, 0, 0x0b, 3, 0, 0x00, 0x0b]),
  ]);
}
