// What stays in this browser between visits.

const PREFIX = 'marinecalc.';

/**
 * What was kept under the key, or undefined.
 * @param {string} key
 * @returns {unknown}
 */
export function recall(key) {
  try {
    const text = localStorage.getItem(PREFIX + key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

/**
 * Keeps the value, or forgets the key when the value is undefined. Tells
 * whether that worked: a browser may refuse to keep anything.
 * @param {string} key
 * @param {unknown} value
 */
export function keep(key, value) {
  try {
    if (value === undefined) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}
