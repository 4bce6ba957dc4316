// What a value is by its schema: which choices there are, and what typed text
// stands for.

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Choices} Choices */

/** @param {Schema} schema */
export function isChoice(schema) {
  return schema.rows !== undefined || schema.enum !== undefined || types(schema).join() === 'boolean';
}

/**
 * @param {Schema} schema
 * @param {Choices} tables
 * @param {string} [pointer] where a table is narrowed for one place
 * @returns {{ value: unknown, words: string }[]}
 */
export function choices(schema, tables, pointer) {
  if (schema.enum) {
    return schema.enum.map((value, i) => ({ value, words: schema.enumTitles?.[i] ?? String(value) }));
  }
  if (schema.rows !== undefined) {
    return (tables[`${schema.rows}${pointer}`] ?? tables[schema.rows] ?? []).map(({ pick, name }) => ({ value: pick, words: name }));
  }
  return [
    { value: true, words: 'Yes' },
    { value: false, words: 'No' },
  ];
}

/**
 * A value as the form shows it: the words for a choice, the text otherwise.
 * @param {unknown} value
 * @param {Schema} schema
 * @param {Choices} tables
 */
export function shown(value, schema, tables) {
  if (Array.isArray(value)) return `${value.length} readings`;
  const chosen = isChoice(schema) && choices(schema, tables).find((c) => c.value === value);
  return chosen ? chosen.words : String(value);
}

/**
 * The default, where the schema alone can tell it in words.
 * @param {Schema} schema
 * @param {Choices} tables
 */
export function standing(schema, tables) {
  const tellable = schema.default !== undefined && !(schema.quantity && typeof schema.default === 'number' && schema.default !== 0);
  return tellable ? { text: shown(schema.default, schema, tables), words: 'default' } : { text: '', words: '' };
}

/**
 * The value that typed text stands for; undefined when nothing is typed.
 * @param {string} text
 * @param {Schema} schema
 * @param {string} unit
 * @param {import('./units.js').Reader} read
 * @returns {unknown}
 */
export function meant(text, schema, unit, read) {
  const trimmed = text.trim();
  if (trimmed === '') return undefined;
  if (!schema.quantity && isNumber(schema) && Number.isFinite(Number(trimmed))) return Number(trimmed);
  return read(trimmed, schema, unit);
}

/** @param {Schema} schema */
export function isNumber(schema) {
  return types(schema).some((t) => t === 'number' || t === 'integer');
}

/**
 * @param {Schema} schema
 * @returns {string[]}
 */
export function types(schema) {
  return Array.isArray(schema.type) ? schema.type : schema.type === undefined ? [] : [schema.type];
}
