// Runs the calculator's WebAssembly module in any JavaScript host that has
// WebAssembly, TextEncoder and crypto: browsers, workers, Node 20 and later.
//
//   import { start } from './marinecalc.js';
//   const calculator = await start(bytesOrModule);
//   const reply = calculator.call({ ask: 'contents' });

import { wasi } from './wasi.js';

/** The version of exports and envelope this loader is written for. */
const CONTRACT = 2;

/**
 * What the module exports. Numbers are 32-bit, and come back negative above 2 GiB.
 * @typedef {object} Exports
 * @property {WebAssembly.Memory} memory
 * @property {() => void} _initialize
 * @property {() => number} version
 * @property {(size: number) => number} alloc
 * @property {(ptr: number) => void} release
 * @property {(ptr: number, size: number) => bigint} call
 */

/**
 * Compiles (unless given a compiled module) and starts the calculator.
 * @param {import('./marinecalc.js').ModuleSource} source
 * @returns {Promise<import('./marinecalc.js').Calculator>}
 */
export async function start(source) {
  const module = source instanceof WebAssembly.Module ? source : await WebAssembly.compile(/** @type {BufferSource} */ (source));
  /** @type {Exports | null} */
  let guest = await enter(module);
  let ready = Promise.resolve();
  const version = guest.version();
  if (version !== CONTRACT) {
    throw new Error(`the module speaks version ${version} of the contract, this loader version ${CONTRACT}`);
  }
  return {
    version,
    ready: () => ready,
    call(request) {
      if (!guest) return refusal('the calculator is being started anew; ask again in a moment');
      let text;
      try {
        text = JSON.stringify(request);
      } catch (slip) {
        return refusal(`the request cannot be written as JSON: ${slip instanceof Error ? slip.message : slip}`);
      }
      try {
        return JSON.parse(ask(guest, text));
      } catch (trap) {
        console.error(trap);
        guest = null; // its memory can no longer be trusted
        ready = enter(module).then((made) => void (guest = made));
        return refusal('the calculator stopped and is started anew; the same request may stop it again');
      }
    },
  };
}

/**
 * A new instance, ready for calls. By promise, because browsers refuse to
 * make an instance of a large module on their main thread at once.
 * @param {WebAssembly.Module} module
 * @returns {Promise<Exports>}
 */
async function enter(module) {
  /** @type {Exports} */
  let made;
  const instance = await WebAssembly.instantiate(module, wasi(module, () => made.memory));
  made = /** @type {Exports} */ (/** @type {unknown} */ (instance.exports));
  made._initialize();
  return made;
}

/**
 * One request and its reply, both text. The memory's buffer is asked for anew
 * after every export, because growing detaches the old one.
 * @param {Exports} guest
 * @param {string} request
 */
function ask(guest, request) {
  const bytes = new TextEncoder().encode(request);
  const from = guest.alloc(bytes.length) >>> 0;
  if (from === 0) return JSON.stringify(refusal(`the request is empty or too long: ${bytes.length} bytes`));
  new Uint8Array(guest.memory.buffer).set(bytes, from);
  const packed = guest.call(from, bytes.length);
  const at = Number(packed >> 32n) >>> 0;
  const size = Number(packed & 0xffffffffn);
  const reply = new TextDecoder().decode(new Uint8Array(guest.memory.buffer, at, size));
  guest.release(at);
  guest.release(from);
  return reply;
}

/**
 * @param {string} what
 * @returns {import('./marinecalc.js').Refusal}
 */
function refusal(what) {
  return { ok: false, problems: [{ where: '', what, allowed: '', hint: '' }] };
}
