// By what the inputs of a calculation that are not asked at once stand
// together: the part of the boat that holds them, or what kind of figure they
// are.

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */

/** The boat file's parts. @type {{ [part: string]: string }} */
const PARTS = {
  readings: 'Readings',
  engine: 'Engine and mounts',
  mounts: 'Engine and mounts',
  gearbox: 'Gearbox',
  outputFlange: 'Gearbox',
  rollingBearing: 'Gearbox',
  wornPart: 'Gearbox',
  fluid: 'Fluid',
  coupling: 'Coupling',
  shaft: 'Shaft',
  sternBearing: 'Shaft',
  propeller: 'Propeller',
  gland: 'Stuffing box',
  bilge: 'Bilge and battery',
  battery: 'Bilge and battery',
  prices: 'Prices',
  choice: 'Prices',
};

/**
 * The title of the group in which an input stands.
 * @param {Schema} schema
 */
export function groupOf(schema) {
  if (schema.rows === 'gauges') return 'How it was read';
  if (schema.level === 'detail') return 'Handbook figures';
  const part = PARTS[(schema.boat ?? '').split('/')[1] ?? ''];
  return part ?? (schema.after !== undefined ? 'From other sheets' : 'This job');
}

/**
 * The inputs by their groups, in the order in which these first come; what
 * comes from handbooks and gauges last.
 * @param {[string, Schema][]} inputs
 */
export function inGroups(inputs) {
  /** @type {Map<string, [string, Schema][]>} */
  const groups = new Map();
  for (const input of inputs) {
    const title = groupOf(input[1]);
    groups.set(title, [...(groups.get(title) ?? []), input]);
  }
  const last = ['From other sheets', 'How it was read', 'Handbook figures'];
  return [...groups].sort(([a], [b]) => last.indexOf(a) - last.indexOf(b));
}
