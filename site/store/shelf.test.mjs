// The boats kept in this browser, as two tabs have them.

import assert from 'node:assert/strict';
import { beforeEach, test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';

import { unlike } from './names.js';

/** A browser without IndexedDB: what it keeps, and whether it does. */
class Memory extends Map {
  full = false;
  getItem(/** @type {string} */ key) {
    return this.get(key) ?? null;
  }
  setItem(/** @type {string} */ key, /** @type {string} */ text) {
    if (this.full) throw new DOMException('full', 'QuotaExceededError');
    this.set(key, text);
    Object.defineProperty(this, key, { value: text, enumerable: true, configurable: true });
  }
  removeItem(/** @type {string} */ key) {
    this.delete(key);
    delete this[key];
  }
}

let memory = new Memory();
const looks = [];
const leaving = [];
beforeEach(() => {
  memory = new Memory();
  Object.defineProperty(memory, 'full', { enumerable: false, writable: true });
  looks.length = 0;
  leaving.length = 0;
  Object.assign(globalThis, {
    localStorage: memory,
    navigator: {},
    addEventListener: (name, act) => name === 'pagehide' && leaving.push(act),
    BroadcastChannel: undefined,
    document: { visibilityState: 'visible', addEventListener: (_, act) => looks.push(act) },
  });
});

let tabs = 0;
async function newTab() {
  const shelf = await import(`./shelf.js?tab=${++tabs}`);
  const told = { keeping: [], changed: [] };
  await shelf.openShelf({ keeping: (s) => told.keeping.push(s), changedElsewhere: (id) => told.changed.push(id) });
  return { ...shelf, told };
}
const settled = () => pause(5);

test('two boats of one name are told apart', async () => {
  assert.equal(unlike('Petrel', ['Dipper']), 'Petrel');
  assert.equal(unlike('Petrel', ['Petrel', 'Petrel (2)', 'Dipper']), 'Petrel (3)');
});

test('what one tab keeps, the next finds', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  const { id, boat } = a.inHand();
  a.change(id, boat, { ...boat, shaft: { diameter: '25 mm' } });
  a.keepTyped(id, 'shaft-torque', { power: '20 kW' });
  await settled();
  const b = await newTab();
  assert.deepEqual(b.inHand().boat, { name: 'Petrel', shaft: { diameter: '25 mm' } });
  assert.deepEqual(b.typed(id, 'shaft-torque'), { power: '20 kW' });
  assert.equal(a.told.keeping.at(-1), 'kept');
});

test('two tabs on one boat lose nothing of each other', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  await settled();
  const b = await newTab();
  const shown = b.inHand();
  a.change(shown.id, a.inHand().boat, { name: 'Petrel', note: 'from a' });
  await settled();
  b.change(shown.id, shown.boat, { ...shown.boat, name: 'Wren' }); // never saw the note
  b.keepTyped(shown.id, 'gland-drip', { dripRate: '5 drips/min' });
  await settled();
  assert.deepEqual(b.inHand().boat, { name: 'Wren', note: 'from a' });
  assert.ok(b.told.changed.includes(shown.id), 'the tab is told');
  for (const look of looks) look();
  await settled();
  assert.deepEqual(a.inHand().boat, { name: 'Wren', note: 'from a' });
  const c = await newTab();
  assert.deepEqual(c.inHand().boat, { name: 'Wren', note: 'from a' });
});

test('tabs with two boats in hand write to their own', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  await settled();
  const b = await newTab();
  b.add({ name: 'Wren' });
  await settled();
  const own = a.inHand();
  a.change(own.id, own.boat, { ...own.boat, note: 'Petrel’s' });
  await settled();
  const c = await newTab();
  assert.deepEqual(c.boats().map((k) => [k.boat.name, k.boat.note]).sort(), [['Petrel', 'Petrel’s'], ['Wren', undefined]]);
});

test('a boat removed in one tab and changed in the other stays whole', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel', shaft: { diameter: '25 mm' } });
  await settled();
  const b = await newTab();
  const { id, boat } = b.inHand();
  a.remove(id);
  await settled();
  b.change(id, boat, { ...boat, note: 'still here' });
  await settled();
  const c = await newTab();
  assert.deepEqual(c.inHand().boat, { name: 'Petrel', shaft: { diameter: '25 mm' }, note: 'still here' });
});

test('what is not written yet when the page is left is taken up again', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  await settled();
  const { id, boat } = a.inHand();
  a.change(id, boat, { ...boat, note: 'the last key' });
  const before = memory.getItem(`marinecalc.kept.${id}`);
  for (const leave of leaving) leave();
  memory.setItem(`marinecalc.kept.${id}`, before); // the write itself was lost
  const b = await newTab();
  assert.deepEqual(b.inHand().boat, { name: 'Petrel', note: 'the last key' });
  assert.equal(memory.getItem(`marinecalc.left.${id}`), null);
});

test('a damaged entry is set aside and hides no other', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  await settled();
  memory.setItem('marinecalc.kept.bad', '{"id":"bad","boat":{"name":"Wr');
  memory.setItem('marinecalc.kept.list', '{"id":"list","boat":[1]}');
  const b = await newTab();
  assert.deepEqual(b.boats().map((k) => k.boat.name), ['Petrel']);
  assert.deepEqual(b.setAside().map((d) => d.name).sort(), ['bad', 'list']);
  assert.match(b.setAside().find((d) => d.name === 'bad').text, /^\{"id":"bad","boat":\{"name":"Wr$/);
  b.change(b.inHand().id, b.inHand().boat, { name: 'Petrel', note: 'x' });
  await settled();
  assert.equal(memory.getItem('marinecalc.kept.bad'), '{"id":"bad","boat":{"name":"Wr', 'it stays as it is');
});

test('boats of earlier versions are brought over with what was typed', async () => {
  memory.setItem('marinecalc.boats', JSON.stringify([{ id: 'p', boat: { name: 'Petrel' } }, { id: 'w', boat: { name: 'Wren' } }]));
  memory.setItem('marinecalc.boat', '"w"');
  memory.setItem('marinecalc.typed.w', JSON.stringify({ 'gland-drip': { dripRate: '5 drips/min' } }));
  const a = await newTab();
  assert.equal(a.inHand().boat.name, 'Wren');
  assert.deepEqual(a.typed('w', 'gland-drip'), { dripRate: '5 drips/min' });
  assert.equal(a.boats().length, 2);
  assert.equal(memory.getItem('marinecalc.boats'), null);
  const b = await newTab();
  assert.equal(b.boats().length, 2);
});

test('of damaged boats of earlier versions nothing is thrown away', async () => {
  const text = '[{"id":"p","boat":{"name":"Petrel"}},{"id":"w","boat":nul';
  memory.setItem('marinecalc.boats', text);
  const a = await newTab();
  a.add({ name: 'New' });
  await settled();
  assert.deepEqual(a.setAside(), [{ name: 'boats', text }]);
  assert.equal(memory.getItem('marinecalc.boats'), text);
});

test('a full store is told, and what is typed stays in the tab', async () => {
  const a = await newTab();
  a.add({ name: 'Petrel' });
  await settled();
  memory.full = true;
  const { id, boat } = a.inHand();
  a.change(id, boat, { ...boat, note: 'typed while full' });
  await settled();
  assert.equal(a.told.keeping.at(-1), 'refused');
  assert.equal(a.inHand().boat.note, 'typed while full');
  memory.full = false;
  a.change(id, a.inHand().boat, { ...a.inHand().boat, note: 'and after' });
  await settled();
  assert.equal(a.told.keeping.at(-1), 'kept');
});

test('a browser that keeps nothing says so, and works', async () => {
  Object.defineProperty(globalThis, 'localStorage', { configurable: true, get: () => { throw new Error('denied'); } });
  try {
    const a = await newTab();
    assert.equal(a.told.keeping.at(-1), 'refused');
    a.add({ name: 'Petrel' });
    const { id, boat } = a.inHand();
    a.change(id, boat, { ...boat, note: 'x' });
    await settled();
    assert.equal(a.inHand().boat.note, 'x');
  } finally {
    Object.defineProperty(globalThis, 'localStorage', { configurable: true, writable: true, value: memory });
  }
});
