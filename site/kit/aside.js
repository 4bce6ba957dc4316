// Asks the calculator aside, in a worker, what takes long. The worker is begun
// with the first such request; where a browser gives none, the page's own
// calculator answers after the next frame. It works at one request at a time,
// and takes the newest of those that wait: that is of the view that is shown.
// What one sheet or part asks is short; while the worker is at nothing longer, it
// is soon answered there. A boat is handed over when it is another than the last:
// the one of a sheet is the same at every key.

import { lenient } from './lenient.js';
import { oneRun } from './one-run.js';

/** @typedef {import('../../wasm/marinecalc.js').Calculator} Calculator */

const SILENT = 10_000; // ms after which a worker that was to answer shortly is none
const SHORT = ['contents', 'blank', 'run', 'fits', 'keep', 'find', 'part', 'procedures', 'procedure', 'boat'];

/**
 * @param {Promise<Calculator>} calculator the page's own
 * @param {Promise<WebAssembly.Module>} module
 * @param {string} program the worker's
 */
export function openAside(calculator, module, program) {
  /** @typedef {{ request: any, done: (reply: any) => void, fail: (reason: unknown) => void }} Asked */
  /** @type {Asked[]} oldest first */
  const waiting = [];
  /** @type {Asked | undefined} what the worker is at */
  let open;
  /** @type {Promise<Worker | undefined> | undefined} */
  let worker;
  let last = 0;
  let up = false; // whether it has answered before
  /** @type {unknown} */
  let boat; // that the worker has
  /** @type {ReturnType<typeof oneRun> | undefined} */
  let own;

  /** @param {Asked} asked */
  const here = ({ request, done, fail }) => void calculator.then((found) => setTimeout(() => done((own ??= oneRun(found))(request))), fail);

  /** @param {Asked} asked */
  const isShort = ({ request }) => SHORT.includes(request.ask) && !request.noRanges;

  /** The worker is no use: the page's own answers what is open, and the rest. */
  const giveUp = () => {
    worker = Promise.resolve(undefined);
    up = false;
    boat = undefined;
    if (open) waiting.push(open);
    open = undefined;
    waiting.splice(0).reverse().forEach(here);
  };

  const begin = async () => {
    try {
      const address = URL.createObjectURL(new Blob([program], { type: 'text/javascript' }));
      const made = new Worker(address);
      made.addEventListener('error', giveUp);
      made.addEventListener('message', ({ data: { number, reply, failed } }) => {
        if (number !== last || !open) return;
        if (failed !== undefined || !reply) return giveUp();
        up = true;
        open.done(reply);
        open = undefined;
        setTimeout(() => next(made)); // what its asker asks next goes before what waits
      });
      made.postMessage(await module);
      return made;
    } catch {
      return undefined;
    }
  };

  /** @param {Worker} to */
  const next = (to) => {
    if (open) return;
    open = waiting.pop();
    if (!open) return;
    const now = open;
    const { boat: of, ...request } = now.request;
    to.postMessage({ number: ++last, request, ofBoat: of !== undefined, ...(of !== boat && { boat: of }) });
    boat = of ?? boat;
    if (up && isShort(now)) {
      setTimeout(() => {
        if (open !== now) return;
        to.terminate();
        giveUp();
      }, SILENT);
    }
  };

  const aside = /** @type {import('../app.js').App['aside']} */ (
    (/** @type {any} */ request) =>
      new Promise((done, fail) => {
        waiting.push({ request: lenient(request), done, fail });
        void (worker ??= begin()).then((to) => (to ? next(to) : giveUp()));
      })
  );
  return { aside, free: () => up && [...waiting, ...(open ? [open] : [])].every(isShort) };
}
