// Cells of a list by the names of their columns.

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
