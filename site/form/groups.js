// By what the inputs of a calculation that are not asked at once stand
// together: the part of the boat that holds them, or what kind of figure they
// are.

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */

/**
 * The title of the group in which an input stands.
 * @param {Schema} schema
 * @param {{ [member: string]: string }} places titles by members of the boat file
 */
function groupOf(schema, places) {
  if (schema.rows === 'gauges') return 'How it was read';
  if (schema.level === 'detail') return 'Handbook figures';
  return places[(schema.boat ?? '').split('/')[1] ?? ''] ?? (schema.after !== undefined ? 'From other sheets' : 'This job');
}

/**
 * The inputs by their groups, in the order in which these first come; what
 * comes from handbooks and gauges last.
 * @param {[string, Schema][]} inputs
 * @param {{ [member: string]: string }} places titles by members of the boat file
 */
export function inGroups(inputs, places) {
  /** @type {Map<string, [string, Schema][]>} */
  const groups = new Map();
  for (const input of inputs) {
    const title = groupOf(input[1], places);
    groups.set(title, [...(groups.get(title) ?? []), input]);
  }
  const last = ['From other sheets', 'How it was read', 'Handbook figures'];
  return [...groups].sort(([a], [b]) => last.indexOf(a) - last.indexOf(b));
}
