// The part of WASI preview 1 that a Go reactor really uses: clocks, random
// bytes, empty arguments and environment, and output to the console. There are
// no files, no sockets and no way out of the sandbox.

const OK = 0;
const BAD_DESCRIPTOR = 8;
const NOT_SUPPORTED = 52;
const CHARACTER_DEVICE = 2;

/**
 * The import object for one instance.
 * @param {WebAssembly.Module} module
 * @param {() => WebAssembly.Memory} memory gives the instance's memory; asked each time, since memory can grow
 * @returns {WebAssembly.Imports}
 */
export function wasi(module, memory) {
  const view = () => new DataView(memory().buffer);
  const bytes = (/** @type {number} */ at, /** @type {number} */ size) =>
    new Uint8Array(memory().buffer, at >>> 0, size >>> 0);
  const lines = [new Lines(console.log), new Lines(console.error)];

  /** @type {(count: number, size: number) => number} */
  const none = (count, size) => {
    view().setUint32(count >>> 0, 0, true);
    view().setUint32(size >>> 0, 0, true);
    return OK;
  };

  /** @type {Record<string, (...given: any[]) => number>} */
  const real = {
    args_sizes_get: none,
    args_get: () => OK,
    environ_sizes_get: none,
    environ_get: () => OK,

    clock_time_get(/** @type {number} */ clock, /** @type {bigint} */ _precision, /** @type {number} */ at) {
      const ms = clock === 0 ? Date.now() : performance.now();
      view().setBigUint64(at >>> 0, BigInt(Math.round(ms * 1e6)), true);
      return OK;
    },

    random_get(/** @type {number} */ at, /** @type {number} */ size) {
      const most = 65536; // getRandomValues refuses more at once
      for (let done = 0; done < size; done += most) {
        crypto.getRandomValues(bytes(at + done, Math.min(most, size - done)));
      }
      return OK;
    },

    fd_write(/** @type {number} */ fd, /** @type {number} */ list, /** @type {number} */ count, /** @type {number} */ written) {
      const out = lines[fd - 1];
      if (!out) return BAD_DESCRIPTOR;
      let total = 0;
      for (let i = 0; i < count; i++) {
        const at = (list >>> 0) + 8 * i;
        const size = view().getUint32(at + 4, true);
        out.write(bytes(view().getUint32(at, true), size));
        total += size;
      }
      view().setUint32(written >>> 0, total, true);
      return OK;
    },

    fd_fdstat_get(/** @type {number} */ fd, /** @type {number} */ at) {
      if (fd > 2) return BAD_DESCRIPTOR;
      bytes(at, 24).fill(0);
      view().setUint8(at >>> 0, CHARACTER_DEVICE);
      return OK;
    },
    fd_fdstat_set_flags: () => OK,
    fd_prestat_get: () => BAD_DESCRIPTOR, // ends the search for folders

    // Go sleeps here on its way into a panic. Saying that every wait is over
    // at once lets the panic print its own words.
    poll_oneoff(/** @type {number} */ waits, /** @type {number} */ events, /** @type {number} */ count, /** @type {number} */ happened) {
      for (let i = 0; i < count; i++) {
        const wait = (waits >>> 0) + 48 * i;
        const event = (events >>> 0) + 32 * i;
        bytes(event, 32).fill(0);
        view().setBigUint64(event, view().getBigUint64(wait, true), true);
        view().setUint8(event + 10, view().getUint8(wait + 8));
      }
      view().setUint32(happened >>> 0, count, true);
      return OK;
    },
    sched_yield: () => OK,

    proc_exit(/** @type {number} */ code) {
      throw new Error(`the calculator ended itself with code ${code}`);
    },
  };

  /** @type {Record<string, (...given: any[]) => number>} */
  const table = {};
  for (const { module: from, name } of WebAssembly.Module.imports(module)) {
    if (from === 'wasi_snapshot_preview1') table[name] = real[name] ?? (() => NOT_SUPPORTED);
  }
  return { wasi_snapshot_preview1: table };
}

/** Gathers bytes into lines for the console. */
class Lines {
  #decoder = new TextDecoder();
  #rest = '';
  #print;

  /** @param {(line: string) => void} print */
  constructor(print) {
    this.#print = print;
  }

  /** @param {Uint8Array} chunk */
  write(chunk) {
    const parts = (this.#rest + this.#decoder.decode(chunk, { stream: true })).split('\n');
    this.#rest = parts.pop() ?? '';
    for (const part of parts) this.#print(part);
  }
}
