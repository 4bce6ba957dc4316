// Tests of the page's own logic that needs no browser: node --test site/

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { crc32 } from './crc32.js';
import { fromLzma } from './lzma.js';
import { at, below, names, trimmed, withAt } from './pointer.js';
import { unitFor, withUnit } from './units.js';

test('pointers escape as RFC 6901 says', () => {
  // The examples of RFC 6901, section 5.
  const document = { 'foo': ['bar', 'baz'], '': 0, 'a/b': 1, 'c%d': 2, 'm~n': 8, ' ': 7 };
  for (const [pointer, value] of [['', document], ['/foo', ['bar', 'baz']], ['/foo/0', 'bar'], ['/', 0], ['/a~1b', 1], ['/c%d', 2], ['/m~0n', 8], ['/ ', 7]]) {
    assert.deepEqual(at(document, pointer), value, pointer);
  }
  assert.equal(below('/x', 'a/b~c'), '/x/a~1b~0c');
  assert.deepEqual(names('/x/a~1b~0c'), ['x', 'a/b~c']);
});

test('only own members are found', () => {
  assert.equal(at({}, '/constructor'), undefined);
  assert.equal(at({}, '/__proto__/x'), undefined);
});

test('putting leaves the old value alone and clears what becomes empty', () => {
  const before = { engine: { power: '24 kW' } };
  assert.deepEqual(withAt(before, '/engine/speed', '2800 rpm'), { engine: { power: '24 kW', speed: '2800 rpm' } });
  assert.deepEqual(before, { engine: { power: '24 kW' } });
  assert.equal(withAt(before, '/engine/power', undefined), undefined);
});

test('rows keep their numbers', () => {
  assert.deepEqual(withAt({}, '/readings/2/gap', '1 mm'), { readings: [{}, {}, { gap: '1 mm' }] });
  assert.deepEqual(withAt({ readings: [{ gap: '1' }, { gap: '2' }] }, '/readings/0/gap', undefined), { readings: [{}, { gap: '2' }] });
});

test('rows without anything are not sent from the end of a list', () => {
  assert.deepEqual(trimmed({ readings: [{}, { gap: '1' }, {}, {}] }), { readings: [{}, { gap: '1' }] });
  assert.equal(trimmed({ readings: [{}, {}], engine: {} }), undefined);
});

test('a bare number takes the unit beside its field, and nothing else does', () => {
  for (const bare of ['12', '1.5', '-3', '1,5', '7/16', '1-11/16', '1 1/4', ' 12 ']) {
    assert.equal(withUnit(bare, 'mm'), `${bare.trim()} mm`, bare);
  }
  for (const text of ['', '12 in', '7/16"', '12 ± 1', '5 %', 'wide', '1e3', '2 3', '1-2', '12/', '1//2']) {
    assert.equal(withUnit(text, 'mm'), text, text);
  }
  assert.equal(withUnit('0.2', ''), '0.2');
});

test('the unit follows the system in force', () => {
  const schema = { units: ['mm', 'in'] };
  assert.equal(unitFor(schema, 'metric'), 'mm');
  assert.equal(unitFor(schema, 'us'), 'in');
  assert.equal(unitFor(schema, 'both'), 'mm');
  assert.equal(unitFor({}, 'us'), '');
});

// Written and kept up to date by cmd/page/lzma/pack_test.go.
const samples = JSON.parse(readFileSync(new URL('testdata/lzma.json', import.meta.url), 'utf8')).map(
  (sample) => ({ ...sample, packed: new Uint8Array(Buffer.from(sample.packed, 'base64')) }),
);
const unpacked = async (packed) => Buffer.from(await new Response(fromLzma(packed)).arrayBuffer());

test('what the page builder packs comes back', async () => {
  assert.ok(samples.length > 10);
  for (const { name, packed, size, sha256 } of samples) {
    const data = await unpacked(packed);
    assert.equal(data.length, size, name);
    assert.equal(createHash('sha256').update(data).digest('hex'), sha256, name);
  }
});

test('it comes in pieces, and other work goes on between them', async () => {
  const { packed, size } = samples.find((sample) => sample.name === 'far away');
  let pieces = 0;
  let turns = 0;
  const timer = setInterval(() => turns++);
  for await (const piece of fromLzma(packed, 1 << 17)) {
    pieces++;
    assert.ok(piece.length < size);
  }
  clearInterval(timer);
  assert.ok(pieces > 7 && turns > 0, `${pieces} pieces, ${turns} turns`);
});

test('data that is cut short or goes on is refused', async () => {
  for (const { name, packed } of samples.filter((sample) => sample.packed.length < 1000)) {
    for (let size = 0; size < packed.length; size++) {
      await assert.rejects(unpacked(packed.slice(0, size)), { name: 'Error', message: /^the packed data / }, `${name}: ${size} bytes`);
    }
    await assert.rejects(unpacked(Uint8Array.of(...packed, 0)), { name: 'Error', message: /^the packed data / }, name);
  }
});

test('data that is changed comes to an end, most often in an Error', async () => {
  const { packed, size } = samples.find((sample) => sample.name === 'text');
  let refused = 0;
  for (let bit = 8 * 13; bit < 8 * packed.length; bit++) {
    const changed = packed.slice();
    changed[bit >> 3] ^= 1 << (bit & 7);
    await unpacked(changed).then(
      (data) => assert.equal(data.length, size),
      (error) => {
        assert.match(String(error), /^Error: the packed data /);
        refused++;
      },
    );
  }
  assert.ok(refused > 7 * (packed.length - 13), `${refused} of ${8 * (packed.length - 13)} refused`); // the checksum finds the rest
});

test('the checksum is that of ISO 3309, and shows every changed bit', () => {
  assert.equal(crc32(new TextEncoder().encode('123456789')), 0xcbf43926); // the check value that catalogues give
  const { packed } = samples.find((sample) => sample.name === 'text');
  for (let bit = 0; bit < 8 * packed.length; bit++) {
    const changed = packed.slice();
    changed[bit >> 3] ^= 1 << (bit & 7);
    assert.notEqual(crc32(changed), crc32(packed));
  }
});
