// Unpacks what cmd/page/lzma.go packs: the .lzma format (LZMA specification by
// I. Pavlov, public domain), piece by piece. The window is the whole output.

// Where the probabilities of all bits stand, in the order of cmd/page/model.go. The
// names are those of the specification.
const STATES = 12;
const POSITIONS = 16; // the most that the format has
const IS_MATCH = 0; // by state and position; 0 is a literal
const IS_REP = IS_MATCH + STATES * POSITIONS; // by state; 1 is one of the last four distances
const IS_REP_G0 = IS_REP + STATES; // by state; 0 is the last distance
const IS_REP_G1 = IS_REP_G0 + STATES; // by state; 0 is the one before
const IS_REP_G2 = IS_REP_G1 + STATES; // by state; 0 is the third, 1 the fourth
const IS_REP0_LONG = IS_REP_G2 + STATES; // by state and position; 0 is one byte only
const SHORT_LEN = 2; // within a length, behind its two bits: trees of 8, by position
const MIDDLE_LEN = SHORT_LEN + 8 * POSITIONS; // the same
const LONG_LEN = MIDDLE_LEN + 8 * POSITIONS; // a tree of 256
const LEN_SIZE = LONG_LEN + 256;
const MATCH_LEN = IS_REP0_LONG + STATES * POSITIONS; // the length at a new distance
const REP_LEN = MATCH_LEN + LEN_SIZE; // the length at one of the last four
const SLOTS = REP_LEN + LEN_SIZE; // the slot of a distance: four trees of 64, by length
const NEAR_BITS = SLOTS + 4 * 64; // the bits below slots 4 to 13: a tree of 32 for each
const ALIGN_BITS = NEAR_BITS + 10 * 32; // the lowest four bits below any other slot: a tree of 16
const LITERALS = ALIGN_BITS + 16; // three trees of 256, by the byte before

const HEAD = 13;

/**
 * The data, as it is unpacked. A stream that is not whole ends in an Error.
 * @param {Uint8Array} packed
 * @param {number} [piece] how many bytes to unpack at a time, between which the page does other work
 * @returns {ReadableStream<Uint8Array<ArrayBuffer>>}
 */
export function fromLzma(packed, piece = 1 << 21) {
  const unpacker = new Unpacker(packed);
  return new ReadableStream(
    {
      async pull(to) {
        await new Promise((done) => setTimeout(done));
        const from = unpacker.done;
        if (from < unpacker.output.length) {
          unpacker.unpack(from + piece);
          to.enqueue(unpacker.output.subarray(from, unpacker.done));
        } else {
          unpacker.finish();
          to.close();
        }
      },
    },
    { highWaterMark: 0 },
  );
}

class Unpacker {
  /** @param {Uint8Array} packed */
  constructor(packed) {
    const head = new DataView(packed.buffer, packed.byteOffset, packed.byteLength);
    if (packed.length < HEAD + 5 || packed[0] >= 9 * 5 * 5 || packed[HEAD] !== 0) throw new Error('the packed data does not begin as it should');
    const size = head.getBigUint64(5, true);
    if (size >> 31n) throw new Error(`the packed data tells a size of ${size} bytes`);
    this.literalBits = packed[0] % 9;
    this.literalPositions = 1 << Math.floor(packed[0] / 9) % 5;
    this.positions = 1 << Math.floor(packed[0] / 45);
    this.packed = packed;
    this.from = HEAD + 5; // the place in packed
    this.output = new Uint8Array(Number(size));
    this.done = 0; // the place in output
    // Typed arrays, because other numbers of 32 bits are slow to write in an object.
    this.range = new Uint32Array([0xffffffff, head.getUint32(HEAD + 1)]); // its width, and where in it the code is
    this.probabilities = new Uint16Array(LITERALS + ((768 * this.literalPositions) << this.literalBits)).fill(1024);
    this.state = 0; // what kinds the last tokens were
    this.reps = new Uint32Array(4).fill(1); // the last four distances
  }

  /**
   * Unpacks until there are that many bytes, or a few more.
   * @param {number} until
   */
  unpack(until) {
    const { output } = this;
    until = Math.min(until, output.length);
    while (this.done < until) {
      const position = this.done & (this.positions - 1);
      if (!this.bit(IS_MATCH + this.state * POSITIONS + position)) {
        this.literal();
        continue;
      }
      const length = this.match(position);
      const distance = this.reps[0];
      const end = this.done + length;
      if (distance === 0 || distance > this.done || end > output.length) throw new Error('the packed data is damaged');
      for (let i = this.done; i < end; i++) output[i] = output[i - distance];
      this.done = end;
    }
    if (this.from > this.packed.length) throw new Error('the packed data ends too early');
  }

  /** Checks that the stream has come to its end: its last code is 0. */
  finish() {
    if (this.from !== this.packed.length || this.range[1] !== 0) throw new Error('the packed data is damaged');
  }

  /** One byte. Behind a match, the one that would have gone on with it tells something. */
  literal() {
    const { output, done, state, literalBits } = this;
    const before = done > 0 ? output[done - 1] : 0;
    const context = ((done & (this.literalPositions - 1)) << literalBits) + (before >> (8 - literalBits));
    const from = LITERALS + 768 * context;
    let node = 1;
    if (state >= 7) {
      let expected = output[done - this.reps[0]];
      let same = true;
      while (same && node < 256) {
        const other = (expected >> 7) & 1;
        expected <<= 1;
        const bit = this.bit(from + 256 + 256 * other + node);
        node = (node << 1) | bit;
        same = bit === other;
      }
    }
    while (node < 256) node = (node << 1) | this.bit(from + node);
    output[done] = node;
    this.done++;
    this.state = state < 4 ? 0 : state < 10 ? state - 3 : state - 6;
  }

  /**
   * The length of a match; its distance becomes the last one.
   * @param {number} position
   */
  match(position) {
    const { state, reps } = this;
    const first = state < 7; // behind a literal
    if (!this.bit(IS_REP + state)) {
      this.state = first ? 7 : 10;
      const length = this.length(MATCH_LEN, position);
      reps[3] = reps[2];
      reps[2] = reps[1];
      reps[1] = reps[0];
      reps[0] = this.distance(length);
      return length;
    }
    let which = 0;
    if (this.bit(IS_REP_G0 + state)) {
      which = 1;
      if (this.bit(IS_REP_G1 + state)) which = 2 + this.bit(IS_REP_G2 + state);
    } else if (!this.bit(IS_REP0_LONG + state * POSITIONS + position)) {
      this.state = first ? 9 : 11;
      return 1;
    }
    this.state = first ? 8 : 11;
    const distance = reps[which];
    for (; which > 0; which--) reps[which] = reps[which - 1];
    reps[0] = distance;
    return this.length(REP_LEN, position);
  }

  /**
   * @param {number} at
   * @param {number} position
   */
  length(at, position) {
    if (!this.bit(at)) return 2 + this.tree(at + SHORT_LEN + 8 * position, 3);
    if (!this.bit(at + 1)) return 10 + this.tree(at + MIDDLE_LEN + 8 * position, 3);
    return 18 + this.tree(at + LONG_LEN, 8);
  }

  /** @param {number} length of the match */
  distance(length) {
    const slot = this.tree(SLOTS + 64 * Math.min(length - 2, 3), 6);
    if (slot < 4) return 1 + slot;
    const below = (slot >> 1) - 1;
    const top = 1 + ((2 | (slot & 1)) << below);
    if (slot < 14) return top + this.reverseTree(NEAR_BITS + 32 * (slot - 4), below);
    const middle = this.direct(below - 4) * 16;
    return top + middle + this.reverseTree(ALIGN_BITS, 4);
  }

  /**
   * The next bit, by the probability at that place, which learns from it.
   * @param {number} at
   */
  bit(at) {
    const { range, probabilities } = this;
    const probability = probabilities[at];
    const bound = Math.imul(range[0] >>> 11, probability) >>> 0;
    let bit = 0;
    if (range[1] < bound) {
      range[0] = bound;
      probabilities[at] = probability + ((2048 - probability) >> 5);
    } else {
      range[0] -= bound;
      range[1] -= bound;
      probabilities[at] = probability - (probability >> 5);
      bit = 1;
    }
    if (range[0] < 0x1000000) this.widen();
    return bit;
  }

  widen() {
    this.range[0] <<= 8;
    this.range[1] = (this.range[1] << 8) | this.packed[this.from++];
  }

  /**
   * A number of count bits, highest first, with a tree of probabilities.
   * @param {number} at
   * @param {number} count
   */
  tree(at, count) {
    let node = 1;
    for (let i = 0; i < count; i++) node = (node << 1) | this.bit(at + node);
    return node - (1 << count);
  }

  /**
   * The same with the lowest bit first.
   * @param {number} at
   * @param {number} count
   */
  reverseTree(at, count) {
    let node = 1;
    let value = 0;
    for (let i = 0; i < count; i++) {
      const bit = this.bit(at + node);
      node = (node << 1) | bit;
      value |= bit << i;
    }
    return value;
  }

  /**
   * A number of count bits at even odds, highest first.
   * @param {number} count
   */
  direct(count) {
    const { range } = this;
    let value = 0;
    for (let i = 0; i < count; i++) {
      range[0] >>>= 1;
      const bit = range[1] < range[0] ? 0 : 1;
      if (bit) range[1] -= range[0];
      value = (value << 1) | bit;
      if (range[0] < 0x1000000) this.widen();
    }
    return value;
  }
}
