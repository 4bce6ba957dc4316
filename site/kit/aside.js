// Asks the calculator aside, in a worker, what takes long. The worker is begun
// with the first such request; where a browser gives none, the page's own
// calculator answers after the next frame.

/** @typedef {import('../../wasm/marinecalc.js').Calculator} Calculator */

/**
 * @param {Calculator} calculator the page's own
 * @param {WebAssembly.Module} module
 * @param {Promise<string>} program the worker's
 */
export function openAside(calculator, module, program) {
  /** @type {Map<number, { request: any, done: (reply: any) => void }>} */
  const open = new Map();
  /** @type {Promise<Worker | undefined> | undefined} */
  let worker;
  let last = 0;

  /** @param {any} request */
  const here = (request) => new Promise((done) => setTimeout(() => done(calculator.call(request))));

  /** The worker is no use: the page's own answers what is open, and the rest. */
  const giveUp = () => {
    worker = Promise.resolve(undefined);
    for (const [number, { request, done }] of open) {
      open.delete(number);
      void here(request).then(done);
    }
  };

  const begin = async () => {
    try {
      const address = URL.createObjectURL(new Blob([await program], { type: 'text/javascript' }));
      const made = new Worker(address);
      made.addEventListener('error', giveUp);
      made.addEventListener('message', ({ data: { number, reply, failed } }) => {
        if (failed !== undefined || !reply) return giveUp();
        const asked = open.get(number);
        open.delete(number);
        asked?.done(reply);
      });
      made.postMessage(module);
      return made;
    } catch {
      return undefined;
    }
  };

  return /** @type {import('../app.js').App['aside']} */ (
    async (/** @type {any} */ request) => {
      worker ??= begin();
      const asked = await worker;
      if (!asked) return here(request);
      return new Promise((done) => {
        const number = ++last;
        open.set(number, { request, done });
        asked.postMessage({ number, request });
      });
    }
  );
}
