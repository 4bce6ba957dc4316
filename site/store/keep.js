// Small things that stay in this browser between visits: units, light, which
// boat was in hand.

const PREFIX = 'marinecalc.';

/**
 * What was kept under the key, or undefined. What cannot be read is handed to
 * damaged, as it stands.
 * @param {string} key
 * @param {(text: string) => void} [damaged]
 * @returns {unknown}
 */
export function recall(key, damaged) {
  let text = null;
  try {
    text = localStorage.getItem(PREFIX + key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    if (text !== null) damaged?.(text);
    return undefined;
  }
}

/**
 * Keeps the value. Tells whether that worked: a browser may refuse to keep
 * anything.
 * @param {string} key
 * @param {unknown} value
 */
export function keep(key, value) {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

/**
 * The keys that begin so.
 * @param {string} beginning
 */
export function keysFrom(beginning) {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX + beginning)).map((key) => key.slice(PREFIX.length));
  } catch {
    return [];
  }
}

/** @param {string} key */
export function forget(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // nothing was kept
  }
}
