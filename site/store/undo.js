// The way back: what was changed on a sheet, the last change first. It lives
// as long as the page is open.

/** @typedef {{ what: string, back: () => void }} Change */

/** @type {Map<string, Change[]>} */
const changes = new Map();
const MOST = 200;

/**
 * Notes a change that can be taken back. A further change of the same thing in
 * one go, such as the next letter of a word, is part of the first.
 * @param {string} place
 * @param {string} what
 * @param {() => void} back
 * @param {boolean} [further]
 */
export function changed(place, what, back, further = false) {
  const list = changes.get(place) ?? [];
  if (further && list.at(-1)?.what === what) return;
  changes.set(place, [...list.slice(1 - MOST), { what, back }]);
}

/** What would be taken back, or undefined. @param {string} place */
export function lastChange(place) {
  return changes.get(place)?.at(-1)?.what;
}

/** Takes the last change back. @param {string} place */
export function takeBack(place) {
  changes.get(place)?.pop()?.back();
}
