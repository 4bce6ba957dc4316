// Which unit a bare number in a field is meant in, and how it is read.

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Units} Units */
/** @typedef {import('../../wasm/marinecalc.js').Calculator} Calculator */
/** @typedef {ReturnType<typeof reader>} Reader */

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
 * A reader of what is typed in the place of a quantity: the text with the
 * field's unit behind it when a bare number was typed, and as it is typed when
 * it is none. What was read once is not asked for again.
 * @param {Calculator} calculator
 */
export function reader(calculator) {
  /** @type {Map<string, string>} */
  const known = new Map();
  /**
   * @param {string} text
   * @param {Schema} schema
   * @param {string} unit
   */
  return (text, schema, unit) => {
    const trimmed = text.trim();
    if (trimmed === '' || unit === '' || schema.quantity === undefined) return trimmed;
    const key = [schema.quantity, unit, trimmed].join('\n');
    const before = known.get(key);
    if (before !== undefined) return before;
    const reply = calculator.call({ ask: 'quantity', quantity: schema.quantity, text: trimmed, unit });
    const read = reply.ok ? reply.text : trimmed;
    known.set(key, read);
    return read;
  };
}
