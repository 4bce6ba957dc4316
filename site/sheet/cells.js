// Cells of a list by the names of their columns.

/** The code of a cell, whose text is people's. @param {import('../../wasm/marinecalc.js').Table['rows'][0]['cells'][0] | undefined} cell */
export const codeOf = (cell) => cell?.word ?? cell?.text ?? '';

/**
 * A reader of the cells of a row by their column's name.
 * @param {import('../../wasm/marinecalc.js').Table} table
 */
export function cells({ columns }) {
  /**
   * @param {import('../../wasm/marinecalc.js').Table['rows'][0] | undefined} row
   * @param {string} column
   */
  return (row, column) => row?.cells[columns.findIndex((c) => c.name === column)];
}
