// Where the values come from that were not typed, in words.

/** @typedef {{ [name: string]: { text: string, words: string } }} Origins */

/** @type {{ [origin: string]: string }} */
const WORDS = {
  "maker's figure": 'the maker’s figure',
  boat: 'from the boat',
  'earlier result': 'from an earlier sheet',
  'handbook row': 'from the table',
  'usual value': 'usual value',
  default: 'default',
};

/**
 * The origins as the sheet tells them.
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @returns {Origins}
 */
export function originsOf(sheet) {
  return Object.fromEntries(
    (sheet.inputs ?? [])
      .filter((i) => i.origin !== 'typed')
      .map((i) => [i.name, { text: i.text, words: WORDS[i.origin] ?? i.origin }]),
  );
}

/**
 * What can be told before there is a sheet.
 * @param {{ [input: string]: import('../../wasm/marinecalc.js').Given }} given
 * @returns {Origins}
 */
export function originsGiven(given) {
  return Object.fromEntries(
    Object.entries(given).map(([name, { text, origin }]) => [name, { text, words: WORDS[origin] ?? origin }]),
  );
}
