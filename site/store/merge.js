// Two changes of one document brought together: what one tab made of it and
// what another did, both begun from the same state.

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * What was changed from one state to the next, applied to a third. Members of
 * objects are brought together one by one, entries of lists as well as they can
 * be told apart; where both changed the same thing, `to` wins.
 * @template T
 * @param {T} from
 * @param {T} to
 * @param {T} onto
 * @returns {T}
 */
export function merged(from, to, onto) {
  if (same(from, onto) || same(to, onto)) return to;
  if (same(from, to)) return onto;
  if (to === undefined) return onto; // taken out here, changed there: it stays
  if (isPlain(to) && isPlain(onto)) return /** @type {any} */ (members(isPlain(from) ? from : {}, to, onto));
  if (Array.isArray(to) && Array.isArray(onto)) return /** @type {any} */ (entries(Array.isArray(from) ? from : [], to, onto));
  return to;
}

/**
 * @param {Json} from
 * @param {Json} to
 * @param {Json} onto
 */
function members(from, to, onto) {
  /** @type {Json} */
  const all = {};
  for (const name of new Set([...Object.keys(onto), ...Object.keys(to)])) {
    const value = merged(own(from, name), own(to, name), own(onto, name));
    if (value !== undefined) all[name] = value;
  }
  return all;
}

/**
 * Lists. Where both have every entry still at its place, they are brought
 * together one by one, and what either added comes behind. Else those go that
 * one took out and the other left alone, and what either changed or added
 * stays: a reading too many can be taken out again, one too few cannot be got
 * back.
 * @param {unknown[]} from
 * @param {unknown[]} to
 * @param {unknown[]} onto
 */
function entries(from, to, onto) {
  const n = from.length;
  const less = (/** @type {unknown[]} */ list, /** @type {unknown[]} */ gone) => list.filter((e) => !gone.some((g) => same(g, e)));
  const inPlace = (/** @type {unknown[]} */ list) => list.length >= n && from.every((entry, i) => meansTheSame(entry, list[i]));
  if (inPlace(to) && inPlace(onto)) {
    const both = from.map((entry, i) => merged(entry, to[i], onto[i]));
    return [...both, ...onto.slice(n), ...less(to.slice(n), onto.slice(n))];
  }
  return [...less(to, less(from, onto)), ...less(less(onto, from), to)];
}

/** What tells the entries of a list apart. */
const MARKS = ['date', 'time', 'name', 'id', 'step', 'remedy', 'what'];

/**
 * Whether two states of an entry are of one thing.
 * @param {unknown} a
 * @param {unknown} b
 */
function meansTheSame(a, b) {
  if (!isPlain(a) || !isPlain(b)) return true;
  return MARKS.every((mark) => same(own(a, mark), own(b, mark)));
}

/**
 * Whether two documents are the same, whatever the order of their members.
 * @param {unknown} a
 * @param {unknown} b
 * @returns {boolean}
 */
export function same(a, b) {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((e, i) => same(e, b[i]));
  if (!isPlain(a) || !isPlain(b)) return false;
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => Object.hasOwn(b, name) && same(a[name], b[name]));
}

/**
 * @param {Json} of
 * @param {string} name
 */
function own(of, name) {
  return Object.hasOwn(of, name) ? of[name] : undefined;
}

/**
 * @param {unknown} value
 * @returns {value is Json}
 */
export function isPlain(value) {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
