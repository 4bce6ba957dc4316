// Which unit a bare number in a field is meant in, and how it is read.

import { readMoney } from '../kit/money.js';

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
 * The example in the units in force; none where the schema has it in others.
 * @param {Schema} schema
 * @param {Units} system
 */
export function exampleIn({ examples = [], units: both }, system) {
  const [metric, us] = both ?? [];
  if (system !== 'us' || us === metric) return examples[0];
  return examples.find((e) => String(e).endsWith(` ${us}`) || (us === 'thou' && String(e).endsWith(' in')));
}

/**
 * A reader of what is typed in the place of a quantity: the text with the
 * field's unit behind it when a bare number was typed, and as it is typed when
 * it is none. What was read once is not asked for again.
 * @param {Calculator} calculator
 */
export function reader(calculator) {
  /** @type {Map<string, { text: string, si: number | undefined }>} */
  const known = new Map();
  /**
   * @param {string} text
   * @param {Schema} schema
   * @param {string} unit
   */
  const both = (text, { quantity = '' }, unit) => {
    const key = [quantity, unit, text].join('\n');
    const before = known.get(key);
    if (before) return before;
    const reply = calculator.call({ ask: 'quantity', quantity, text, unit });
    const read = reply.ok ? { text: reply.text, si: reply.si } : { text, si: undefined };
    known.set(key, read);
    return read;
  };
  /**
   * @param {string} text
   * @param {Schema} schema
   * @param {string} unit
   */
  const read = (text, schema, unit) => {
    const trimmed = text.trim();
    if (schema.quantity === 'money') return readMoney(trimmed);
    return trimmed === '' || unit === '' || schema.quantity === undefined ? trimmed : both(trimmed, schema, unit).text;
  };
  /**
   * What a value of a form is in SI; undefined where it is none.
   * @param {unknown} value
   * @param {Schema} schema
   * @returns {number | undefined}
   */
  const si = (value, schema) => (typeof value === 'number' ? value : typeof value === 'string' ? both(value, schema, '').si : undefined);
  return Object.assign(read, { si });
}
