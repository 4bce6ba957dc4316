// Which unit a bare number in a field is meant in.

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Units} Units */

// A decimal number, a fraction, or a whole number and a fraction; no unit.
const BARE = /^[+\-−]?(?:(?:\d+[\s-]+)?\d+\/\d+|[\d.,]*\d[\d.,]*)$/;

/**
 * The unit shown beside the field; empty when there is none to show.
 * @param {Schema} schema
 * @param {Units} system
 */
export function unitFor(schema, system) {
  const [metric = '', us = metric] = schema.units ?? [];
  return system === 'us' ? us : metric;
}

/**
 * The text with the field's unit behind it when a bare number was typed.
 * @param {string} text
 * @param {string} unit
 */
export function withUnit(text, unit) {
  const trimmed = text.trim();
  return unit !== '' && BARE.test(trimmed) ? `${trimmed} ${unit}` : trimmed;
}
