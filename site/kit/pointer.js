// JSON pointers (RFC 6901) and the places they point at.

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * The pointer to a named place below another.
 * @param {string} pointer
 * @param {string | number} name
 */
export function below(pointer, name) {
  return `${pointer}/${String(name).replaceAll('~', '~0').replaceAll('/', '~1')}`;
}

/**
 * The names along a pointer.
 * @param {string} pointer
 */
export function names(pointer) {
  return pointer
    .split('/')
    .slice(1)
    .map((n) => n.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/**
 * What stands there, or undefined.
 * @param {unknown} value
 * @param {string} pointer
 * @returns {unknown}
 */
export function at(value, pointer) {
  for (const name of names(pointer)) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return undefined;
    value = /** @type {Json} */ (value)[name];
  }
  return value;
}

/**
 * A copy of the value with something else standing there. undefined takes the
 * place away, and with it the objects left empty above it; rows of a list
 * stay, so that the others keep their numbers.
 * @param {unknown} value
 * @param {string} pointer
 * @param {unknown} put
 * @returns {unknown}
 */
export function withAt(value, pointer, put) {
  const [name, ...rest] = names(pointer);
  if (name === undefined) return put;
  const inner = rest.map((n) => below('', n)).join('');
  if (Array.isArray(value)) {
    const copy = value.slice();
    copy[Number(name)] = withAt(value[Number(name)] ?? {}, inner, put) ?? {};
    return Array.from(copy, (row) => row ?? {}); // rows skipped so far
  }
  const copy = { .../** @type {Json} */ (typeof value === 'object' && value !== null ? value : {}) };
  const made = withAt(copy[name] ?? (isRow(rest[0]) ? [] : {}), inner, put);
  if (made === undefined) delete copy[name];
  else copy[name] = made;
  return Object.keys(copy).length > 0 ? copy : undefined;
}

/** @param {string | undefined} name */
function isRow(name) {
  return name !== undefined && /^\d+$/.test(name);
}

/**
 * The value without the rows at a list's end in which nothing stands.
 * @param {unknown} value
 * @returns {any}
 */
export function trimmed(value) {
  if (Array.isArray(value)) {
    const rows = value.map((row) => trimmed(row) ?? {});
    while (rows.length > 0 && isEmpty(rows[rows.length - 1])) rows.pop();
    return rows.length > 0 ? rows : undefined;
  }
  if (typeof value !== 'object' || value === null) return value;
  const kept = Object.entries(value)
    .map(([name, inner]) => [name, trimmed(inner)])
    .filter(([, inner]) => inner !== undefined);
  return kept.length > 0 ? Object.fromEntries(kept) : undefined;
}

/**
 * A value as it was changed by hand, without what stands empty: as trimmed, but
 * what was not touched stays as it was, empty lists too, which are an answer.
 * @param {unknown} now
 * @param {unknown} was
 * @returns {any}
 */
export function tidied(now, was) {
  if (now === was || typeof now !== 'object' || now === null) return now;
  if (Array.isArray(now)) {
    const before = Array.isArray(was) ? was : [];
    const rows = now.map((row, i) => tidied(row, before[i]) ?? {});
    while (rows.length > 0 && isEmpty(rows[rows.length - 1]) && rows.length > before.length) rows.pop();
    return rows.length > 0 ? rows : undefined;
  }
  const before = /** @type {Json} */ (typeof was === 'object' && was !== null && !Array.isArray(was) ? was : {});
  const kept = Object.entries(now)
    .map(([name, inner]) => [name, tidied(inner, Object.hasOwn(before, name) ? before[name] : undefined)])
    .filter(([, inner]) => inner !== undefined);
  return kept.length > 0 ? Object.fromEntries(kept) : undefined;
}

/** @param {unknown} value */
function isEmpty(value) {
  return typeof value === 'object' && value !== null && Object.keys(value).length === 0;
}

/**
 * How many values stand in a value.
 * @param {unknown} value
 * @returns {number}
 */
export function count(value) {
  if (typeof value !== 'object' || value === null) return value === undefined ? 0 : 1;
  return Object.values(value).reduce((sum, inner) => sum + count(inner), 0);
}
