import { Calculator } from './marinecalc.js';

export * from './marinecalc.js';

/**
 * Compiles and starts the module that lies beside this file, or at the address given.
 * Compiling takes seconds: load once and keep it.
 * Rejects when the module cannot be read or compiled, or speaks another contract.
 */
export function load(from?: string | { readonly href: string }): Promise<Calculator>;
