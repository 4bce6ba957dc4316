// Instruments for the hand that belong to one sheet or another.

import { dripCounter } from './drips.js';

/**
 * The instrument of a sheet, or nothing.
 * @param {import('../app.js').App} app
 * @param {string} calculation
 * @param {import('../form/form.js').Form} form
 */
export function instrument(app, calculation, form) {
  const drips = form.fields.get('/dripRate');
  return drips && ['gland-heat', 'gland-drip'].includes(calculation) ? dripCounter(app, drips) : null;
}
