// What every view is given.

/**
 * @typedef {object} App
 * @property {import('../wasm/marinecalc.js').Calculator} calculator
 * @property {<R extends import('../wasm/marinecalc.js').Request>(request: R) => Promise<import('../wasm/marinecalc.js').ReplyTo<R>>} aside
 *   asks the calculator for what takes long, without holding the page up
 * @property {() => boolean} free whether it is answered there as soon as here
 * @property {<R extends import('../wasm/marinecalc.js').Request>(request: R) => Promise<import('../wasm/marinecalc.js').ReplyTo<R>>} ask
 *   asks aside where that is free, and here where not
 * @property {import('../wasm/marinecalc.js').ContentsReply} contents
 * @property {string} build which calculator this is
 * @property {import('./form/units.js').Reader} read what was typed for a quantity
 * @property {import('../wasm/marinecalc.js').Json[]} demonstrationBoats
 * @property {() => void} redraw draws the view anew, or what stands in for it where it cannot be drawn
 */

/**
 * A view puts itself into the page's main part and returns its title.
 * @callback View
 * @param {App} app
 * @param {HTMLElement} main
 * @param {string} [name] the calculation, where the view shows one
 * @returns {string}
 */

export {};
