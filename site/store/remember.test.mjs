// What was typed on a sheet, kept with the boat.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { leftOver, placesFor, remember } from './remember.js';

test('what was typed goes to its place in the boat, readings under their day', () => {
  const schema = {
    properties: {
      diameter: { title: 'Diameter', boat: '/shaft/diameter' },
      gap: { title: 'Gap', boat: '/readings/latest/gap' },
      hours: { title: 'Hours', boat: '/readings/hours-of-run/gap' },
      date: { title: 'Date', boat: '/readings/latest/date' },
      gauge: { title: 'Gauge' },
      kind: { title: 'Kind', boat: '/coupling/kind' },
    },
  };
  const typed = { diameter: '30 mm', gap: '0.4 mm', hours: '3 h', date: '2026-01-01', gauge: 'feeler', kind: 'rigid' };
  const places = placesFor(schema, typed);
  assert.deepEqual(places.map((p) => p.name), ['diameter', 'gap', 'kind']);
  const before = { readings: [{ date: '2026-05-01', coupling: { kind: 'flexible' } }] };
  const after = remember(before, places, typed, '2026-06-01');
  // A reading of May says what kind the coupling is since, so the new kind is dated too.
  assert.deepEqual(after, {
    shaft: { diameter: '30 mm' },
    readings: [before.readings[0], { date: '2026-06-01', gap: '0.4 mm', coupling: { kind: 'rigid' } }],
  });
  assert.equal(before.readings.length, 1);
  assert.deepEqual(remember(after, places.slice(1, 2), { gap: '0.3 mm' }, '2026-06-01').readings[1].gap, '0.3 mm');
  assert.deepEqual(leftOver(typed, places), { hours: '3 h', date: '2026-01-01', gauge: 'feeler' });
});
