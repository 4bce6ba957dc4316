// What fault finding asks next, of what the sheet proposes.

import { cells } from '../sheet/cells.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */

const EVEN = 0.5;

/**
 * The ids of looks and quick questions in the order in which they are asked:
 * quick questions first. A look goes before them where it settles the cause that
 * leads, or where something leads, was found or keeps the shaft still and no quick
 * question tells more.
 * @param {Sheet} sheet
 * @returns {string[]}
 */
export function proposed(sheet) {
  const of = (/** @type {string} */ name) =>
    (sheet.tables ?? []).filter((t) => t.name === name).flatMap((t) => t.rows.map((r) => ({ id: cells(t)(r, 'evidence')?.text ?? '', bits: cells(t)(r, 'bits')?.si ?? 0 })));
  const result = (/** @type {string} */ name) => sheet.results.find((r) => r.name === name);
  const looks = of('nextChecks');
  const quick = of('quickQuestions');
  const leads = (result('probability')?.si ?? 0) >= EVEN;
  const settles = leads && looks[0]?.id === result('confirmEvidence')?.text;
  const tells = (looks[0]?.bits ?? 0) >= (quick[0]?.bits ?? 0);
  const first = settles || (tells && (leads || result('found')?.text || result('heldBack')?.text));
  return (first ? [...looks, ...quick] : [...quick, ...looks]).map((q) => q.id);
}
