// Where the values come from that were not typed, in words.

/** @typedef {{ [name: string]: { text: string, words: string, of?: string } }} Origins of: what of the boat */

/** In words, and in one where there is little room. @type {{ [origin: string]: [string, string] }} */
const WORDS = {
  "maker's figure": ['the maker’s figure', 'maker'],
  boat: ['from the boat', 'boat'],
  'earlier result': ['from an earlier sheet', 'sheet'],
  'handbook row': ['from the table', 'table'],
  'usual value': ['usual value', 'usual'],
};

/** The words of an origin in one. @param {string} words */
export function brief(words) {
  return Object.values(WORDS).find(([all]) => all === words)?.[1] ?? words;
}

/**
 * The origins as the sheet tells them.
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 * @returns {Origins}
 */
export function originsOf(sheet) {
  return Object.fromEntries(
    (sheet.inputs ?? [])
      .filter((i) => i.origin !== 'typed')
      .map((i) => [i.name, { text: i.text, words: WORDS[i.origin]?.[0] ?? i.origin, ...(i.origin === 'boat' && i.source && { of: i.source }) }]),
  );
}

/**
 * What can be told before there is a sheet.
 * @param {{ [input: string]: import('../../wasm/marinecalc.js').Given }} given
 * @returns {Origins}
 */
export function originsGiven(given) {
  return Object.fromEntries(
    Object.entries(given).map(([name, { text, origin }]) => [name, { text, words: WORDS[origin]?.[0] ?? origin }]),
  );
}
