// Reads binary data back from the text that cmd/page/letters writes: each
// character has a number, those that may not stand in the page left out, and a
// number carries 16 bits below LONG twice, 15 from there; lowest bits first.

const SURROGATES = 0xd800;
const SURROGATE_COUNT = 0x800;
const LONG = 0x8000 - SURROGATE_COUNT - 3;

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
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    let n = code - 1; // past NUL
    if (code > SURROGATES) n -= SURROGATE_COUNT;
    if (code > 0x3c) n--;
    if (code > 0x0d) n--;
    if (n < 2 * LONG) {
      bits |= ((n >> 1) | ((n & 1) << 15)) << held;
      held += 16;
    } else {
      bits |= (n - LONG) << held;
      held += 15;
    }
    for (; held >= 8; held -= 8) {
      data[done++] = bits & 255; // beyond the end it is lost, as it should be
      bits >>>= 8;
    }
  }
  return data;
}
