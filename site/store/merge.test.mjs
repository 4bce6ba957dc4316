// Two changes of one document brought together.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { merged, same } from './merge.js';

const boat = { name: 'Dipper', shaft: { diameter: '25 mm' }, readings: [{ date: '2026-05-01', dripRate: '6 drips/min' }, { date: '2026-06-01', dripRate: '7 drips/min' }] };

test('changes of different members are both kept', () => {
  const here = { ...boat, note: 'from here' };
  const there = { ...boat, name: 'Wren', shaft: { diameter: '25 mm', material: 'bronze' } };
  assert.deepEqual(merged(boat, here, there), { ...there, note: 'from here' });
});

test('an empty list is a value', () => {
  const here = { ...boat, work: { remedies: [] } };
  assert.deepEqual(merged(boat, here, { ...boat, note: 'x' }), { ...here, note: 'x' });
});

test('readings added here and there all stay, once each', () => {
  const here = { ...boat, readings: [...boat.readings, { date: '2026-07-01', dripRate: '8 drips/min' }] };
  const there = { ...boat, readings: [...boat.readings, { date: '2026-07-02', dripRate: '9 drips/min' }] };
  const both = merged(boat, here, there);
  assert.deepEqual(both.readings.map((r) => r.date).sort(), ['2026-05-01', '2026-06-01', '2026-07-01', '2026-07-02']);
  assert.deepEqual(merged(boat, here, here), here);
});

test('one reading changed here and another there', () => {
  const here = structuredClone(boat);
  const there = structuredClone(boat);
  here.readings[0].dripRate = '5 drips/min';
  there.readings[1].note = 'warm';
  assert.deepEqual(merged(boat, here, there).readings, [{ date: '2026-05-01', dripRate: '5 drips/min' }, { date: '2026-06-01', dripRate: '7 drips/min', note: 'warm' }]);
});

test('what is taken out on one side and left alone on the other goes; what was changed there stays', () => {
  const less = { ...boat, readings: boat.readings.slice(1) };
  assert.deepEqual(merged(boat, less, { ...boat, note: 'x' }), { ...less, note: 'x' });
  const changed = structuredClone(boat);
  changed.readings[0].dripRate = '5 drips/min';
  assert.equal(merged(boat, less, changed).readings.length, 2);
  assert.equal(merged(boat, changed, less).readings.length, 2);
  const { shaft: _, ...bare } = boat;
  assert.deepEqual(merged(boat, bare, { ...boat, shaft: { diameter: '30 mm' } }).shaft, { diameter: '30 mm' });
});

test('where both changed the same figure, the later one stands', () => {
  assert.equal(merged('25 mm', '26 mm', '27 mm'), '26 mm');
});

// Whatever two tabs do to a log by adding and changing, no reading that either
// has at the end is missing, and the order of coming together matters only
// where both changed the same.
test('random logs lose nothing', () => {
  let seed = 7;
  const random = (/** @type {number} */ n) => (seed = (seed * 48271) % 2147483647) % n;
  for (let round = 0; round < 2000; round++) {
    const log = Array.from({ length: random(6) }, (_, i) => ({ date: `d${i}`, value: random(3) }));
    const edit = (/** @type {string} */ who) => {
      const own = structuredClone(log);
      for (let n = random(4); n > 0; n--) {
        if (random(2) === 0 || own.length === 0) own.push({ date: `${who}${n}`, value: random(9) });
        else own[random(own.length)].value = 10 + random(9);
      }
      if (random(4) === 0) own.splice(random(own.length + 1), 1);
      return own;
    };
    const a = edit('a');
    const b = edit('b');
    const both = merged(log, a, b);
    const changed = (/** @type {any[]} */ own) => own.filter((e) => !log.some((l) => same(l, e)));
    for (const entry of changed(a)) assert.ok(both.some((e) => same(e, entry)), 'of a: ' + JSON.stringify({ log, a, b, both }));
    for (const entry of changed(b)) {
      const alsoMine = changed(a).some((e) => e.date === entry.date);
      assert.ok(alsoMine || both.some((e) => same(e, entry)), 'of b: ' + JSON.stringify({ log, a, b, both }));
    }
  }
});
