// What can be taken away from a sheet besides paper: its tables for a
// spreadsheet, its dates for the person's own calendar.

import { button } from '../kit/dom.js';
import { forFile, saveFile } from '../store/files.js';
import { cells } from './cells.js';

/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {import('../../wasm/marinecalc.js').RunRequest} RunRequest */

/**
 * A button for each thing that this sheet can be saved as.
 * @param {import('../../wasm/marinecalc.js').Calculator} calculator
 * @param {() => RunRequest} request what the sheet was asked with
 * @param {Sheet} sheet
 * @returns {HTMLElement[]}
 */
export function exportButtons(calculator, request, sheet) {
  const name = forFile(sheet.title);
  return (sheet.tables ?? []).map((table) =>
    button(`Save “${table.title}” as CSV`, () => {
      const reply = calculator.call({ ...request(), ask: 'csv', table: table.name });
      if (reply.ok) saveFile(`${name}-${forFile(table.title)}.csv`, 'text/csv', reply.csv);
    }),
  );
}

/**
 * The dates of a plan for the person's own calendar.
 * @param {import('../../wasm/marinecalc.js').Calculator} calculator
 * @param {() => RunRequest} request
 * @param {Sheet} sheet
 * @returns {HTMLElement[]}
 */
export function calendarButton(calculator, request, sheet) {
  const schedule = (sheet.tables ?? []).find((table) => table.name === 'schedule');
  if (!schedule?.rows.some((row) => cells(schedule)(row, 'start')?.text)) return []; // no step has a day
  return [
    button('Save the dates for a calendar', () => {
      const reply = calculator.call({ ...request(), ask: 'calendar' });
      if (reply.ok) saveFile(`${forFile(sheet.title)}.ics`, 'text/calendar', reply.calendar);
    }),
  ];
}
