// The calculator in a worker, for what takes long: it keeps the page's own
// thread free for the next key. It is handed the compiled module once, then
// requests, and answers each under its number.

import { start } from '../wasm/marinecalc.js';
import { oneRun } from './kit/one-run.js';

/** @type {Promise<import('../wasm/marinecalc.js').Calculator> | undefined} */
let calculator;

/** @type {((request: any) => any) | undefined} */
let ask;

/** The boat of the request before. @type {unknown} */
let boat;

addEventListener('message', async ({ data }) => {
  if (data instanceof WebAssembly.Module) {
    calculator = start(data);
    return;
  }
  const { number } = data;
  boat = data.boat ?? boat;
  const request = data.ofBoat ? { ...data.request, boat } : data.request;
  try {
    const found = await calculator;
    await found?.ready();
    if (found) ask ??= oneRun(found);
    postMessage({ number, reply: ask?.(request) });
  } catch (error) {
    postMessage({ number, failed: String(error) });
  }
});
