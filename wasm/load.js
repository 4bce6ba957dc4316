// Starts the calculator from the module that lies beside this file: by a file
// read in Node, by a request anywhere else.
//
//   import { load } from 'marinecalc';
//   const calculator = await load();

import { start } from './marinecalc.js';

export { start };

/**
 * Compiles and starts the module. Compiling takes seconds: load once and keep it.
 * @param {string | URL} [from] where marinecalc.wasm is, when it is not beside this file
 * @returns {Promise<import('./marinecalc.js').Calculator>}
 */
export async function load(from = new URL('./marinecalc.wasm', import.meta.url)) {
  const url = new URL(from, import.meta.url);
  if (url.protocol === 'file:' && typeof process === 'object') {
    const { readFile } = await import('node:fs/promises');
    return start(await readFile(url));
  }
  const reply = await fetch(url);
  if (!reply.ok) throw new Error(`${url}: ${reply.status} ${reply.statusText}; marinecalc.wasm must lie there, or be named to load()`);
  return start(await reply.arrayBuffer());
}
