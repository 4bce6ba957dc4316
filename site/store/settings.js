// How the person wants it shown: units and light. Kept between visits.

import { byId } from '../kit/dom.js';
import { keep, recall } from './keep.js';

/** @typedef {import('../../wasm/marinecalc.js').Units} Units */

/** @type {Units[]} */
const UNITS = ['metric', 'us', 'both'];
const LIGHTS = ['day', 'dusk', 'night'];

/** The units in force. */
export function units() {
  const kept = recall('units');
  return UNITS.find((u) => u === kept) ?? 'metric';
}

/** The light in force. */
export function light() {
  const kept = recall('light');
  return LIGHTS.find((l) => l === kept) ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'dusk' : 'day');
}

/**
 * Takes over the units that a boat's file asks for.
 * @param {import('../../wasm/marinecalc.js').Json} boat
 */
export function followBoat(boat) {
  const asked = UNITS.find((u) => u === boat.units);
  if (asked && recall('units.own') === undefined) keep('units.own', units()); // a boat's own units are not the person's
  const own = asked ?? UNITS.find((u) => u === recall('units.own'));
  if (own === undefined) return;
  keep('units', own);
  byId('units', HTMLSelectElement).value = own;
}

/**
 * Wires up the two selects of the header.
 * @param {() => void} unitsChanged
 */
export function openSettings(unitsChanged) {
  const unitChoice = byId('units', HTMLSelectElement);
  unitChoice.value = units();
  unitChoice.addEventListener('change', () => {
    keep('units', unitChoice.value);
    keep('units.own', unitChoice.value);
    unitsChanged();
  });

  const lightChoice = byId('light', HTMLSelectElement);
  const show = () => (document.documentElement.dataset.light = lightChoice.value);
  lightChoice.value = light();
  show();
  lightChoice.addEventListener('change', () => {
    keep('light', lightChoice.value);
    show();
  });
}
