// Names of files and boats.

/**
 * A name in letters that every file system takes: none of those that Windows
 * keeps for devices, not empty, and no longer than most take.
 * @param {string} name
 */
export function forFile(name) {
  const plain = [...name.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase()].slice(0, 60).join('').replace(/^-+|-+$/g, '');
  return /^(|con|prn|aux|nul|(com|lpt)\p{N})$/u.test(plain) ? `boat-${plain}`.replace(/-$/, '') : plain;
}

/**
 * A name that none of the others has.
 * @param {string} name
 * @param {string[]} others
 */
export function unlike(name, others) {
  for (let n = 2, tried = name; ; n++) {
    if (!others.includes(tried)) return tried;
    tried = `${name} (${n})`;
  }
}
