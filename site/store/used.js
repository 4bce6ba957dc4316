// What was used last in this browser, newest first.

import { keep, recall } from './keep.js';

/** @typedef {{ hash: string, title: string }} Used */

export const MOST = 3;

/** @returns {Used[]} */
export function usedLast() {
  const kept = recall('used');
  return Array.isArray(kept) ? kept.filter((u) => typeof u?.hash === 'string' && u.hash.startsWith('#/') && typeof u.title === 'string').slice(0, MOST) : [];
}

/**
 * Takes note of a sheet or of work that is opened.
 * @param {string} hash
 * @param {string} title
 */
export function noteUsed(hash, title) {
  if (!/^#\/(sheet|procedure)\/./.test(hash)) return;
  keep('used', [{ hash, title }, ...usedLast().filter((u) => u.hash !== hash)].slice(0, MOST));
}
