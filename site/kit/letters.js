// Reads binary data back from the text that cmd/page/letters writes: 7 bits
// a character, lowest bits first; a character from PAIRS on stands for one of
// the barred ones and the 7 bits after it.

const BARRED = [0x00, 0x0d, 0x3c];
const PAIRS = 0x100;

/**
 * @param {string} text
 * @param {number} size how many bytes there are
 * @returns {Uint8Array<ArrayBuffer>}
 */
export function fromLetters(text, size) {
  const data = new Uint8Array(size);
  let bits = 0;
  let held = 0;
  let done = 0;
  const take = (/** @type {number} */ seven) => {
    bits |= seven << held;
    held += 7;
    if (held >= 8) {
      data[done++] = bits & 255; // beyond the end it is lost, as it should be
      bits >>= 8;
      held -= 8;
    }
  };
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < PAIRS) take(code);
    else {
      take(BARRED[(code - PAIRS) >> 7] ?? 0);
      take(code & 127);
    }
  }
  return data;
}
