// What a list begins with, and what a new row of it holds.

import { today } from '../kit/dates.js';
import { h } from '../kit/dom.js';
import { at, below } from '../kit/pointer.js';
import { types } from './values.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * The rows a list begins with: as many as the schema asks for at least, or as
 * its example has where those are told apart by a name or a clock position.
 * Only that is taken from it; figures are never anybody's but the person's own.
 * @param {Schema} schema
 * @returns {unknown[]}
 */
export function starters(schema) {
  const example = schema.examples?.[0];
  const [name, part] = Object.entries(schema.items?.properties ?? {})[0] ?? [];
  const tells = name !== undefined && part !== undefined && tellsApart(part);
  const named = tells && Array.isArray(example) ? example : [];
  return Array.from({ length: Math.max(1, schema.minItems ?? 1, named.length) }, (_, i) => {
    const given = named[i]?.[name];
    return { ...freshRow(schema), ...(given === undefined ? {} : { [name]: given }) };
  });
}

/**
 * Whether the first part of a row names it: free words, or a clock position.
 * @param {Schema} part
 */
function tellsApart(part) {
  const isFree = part.quantity === undefined && part.format === undefined && part.rows === undefined && part.enum === undefined;
  return part.quantity === 'direction' || (isFree && types(part).includes('string'));
}

/**
 * A new row: empty but for today's date, and a name with its number where it
 * must have one.
 * @param {Schema} schema
 * @param {number} [number]
 * @returns {Json}
 */
export function freshRow({ items }, number) {
  const parts = Object.entries(items?.properties ?? {});
  const row = Object.fromEntries(parts.filter(([, part]) => part.format === 'date').map(([name]) => [name, today()]));
  const [name, part] = parts[0] ?? [];
  const asks = number !== undefined && name !== undefined && part?.quantity === undefined && tellsApart(part ?? {}) && items?.required?.includes(name);
  return asks ? { ...row, [name]: `${(items?.title ?? 'no.').toLowerCase()} ${number}` } : row;
}

/**
 * A row by its number and by what stands first in it.
 * @param {string} title
 * @param {unknown} row
 */
export function named(title, row) {
  const first = Object.values(row ?? {})[0];
  return typeof first === 'string' ? `${title}: ${first}` : title;
}

/**
 * What each part of a row means, once for all rows; false where nothing is to
 * be said.
 * @param {[string, Schema][]} parts
 */
export function columns(parts) {
  const told = parts.filter(([, part]) => part.description);
  return (
    told.length > 0 &&
    h('dl', { class: 'columns help' }, ...told.flatMap(([name, part]) => [h('dt', {}, part.title ?? name), h('dd', {}, part.description)]))
  );
}

/** Whether a row of those parts is so short that it stands open. @param {Schema[]} parts */
export function isShort(parts) {
  return parts.length <= 4 && parts.every((part) => part.level !== 'detail' && !types(part).some((t) => t === 'object' || t === 'array'));
}

/**
 * Where a missing figure can be had by choosing a row: send the person there.
 * @param {import('../../wasm/marinecalc.js').Problem} problem
 * @param {Map<string, import('./field.js').Field>} fields
 */
export function chosenInstead({ where, choose }, fields) {
  if (choose === undefined || fields.get(where)?.isFilled !== false) return undefined;
  const instead = fields.get(below('', choose));
  return instead?.isFilled ? undefined : instead;
}

/**
 * A schema with its $ref followed; what stands beside the $ref wins.
 * @param {Schema} root
 * @param {Schema} schema
 * @returns {Schema}
 */
export function resolved(root, schema) {
  if (schema.$ref === undefined) return schema;
  const { $ref, ...beside } = schema;
  return { ...resolved(root, /** @type {Schema | undefined} */ (at(root, $ref.replace(/^#/, ''))) ?? {}), ...beside };
}

/**
 * A fold that begins open or closed.
 * @param {boolean} open
 * @param {string} title
 * @param {...(HTMLElement | false)} inside
 */
export function opened(open, title, ...inside) {
  return h('details', { class: 'fold', open }, h('summary', {}, title), ...inside);
}
