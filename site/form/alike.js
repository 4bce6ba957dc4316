// What is the same in all rows of a list, typed once: figures of the make, not
// what is read or measured at each.

import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/**
 * By lists, what goes with the make: of mounts one make is usual (common
 * practice, no source), and where two are typed nothing is offered. Papers are
 * not copied: a figure without its own is no maker's.
 * @type {{ [list: string]: string[] }}
 */
export const ALIKE = {
  mounts: ['threadPitch', 'stiffness', 'stiffnessSideways', 'stiffnessAlong', 'inclination', 'rubberHeight', 'ratedLoad', 'ratedThrust'],
};

/**
 * What one row or more have, all the same, and others have not.
 * @param {string} list
 * @param {Json[]} rows
 * @returns {[string, unknown][]}
 */
export function common(list, rows) {
  return (ALIKE[list] ?? []).flatMap((name) => {
    const [value, ...others] = new Set(rows.flatMap((row) => row?.[name] ?? []));
    return value !== undefined && others.length === 0 && rows.some((row) => row?.[name] === undefined) ? [/** @type {[string, unknown]} */ ([name, value])] : [];
  });
}

/**
 * Offers to copy it; null for lists in which nothing is.
 * @param {string} list
 * @param {[string, Schema][]} parts of a row
 * @param {() => Json[]} rows
 * @param {(rows: Json[]) => void} put
 */
export function offerAlike(list, parts, rows, put) {
  if (!ALIKE[list]) return null;
  const titles = new Map(parts.map(([name, { title = name }]) => [name, title]));
  const said = h('span', {});
  const draw = () => {
    const found = common(list, rows()).filter(([name]) => titles.has(name));
    copy.hidden = found.length === 0;
    copy.textContent = `Copy to all rows: ${found.map(([name, value]) => `${titles.get(name)} ${value}`).join('; ')}`;
  };
  const copy = button('', () => {
    const before = rows();
    const found = Object.fromEntries(common(list, before).filter(([name]) => titles.has(name)));
    put(before.map((row) => ({ ...row, ...Object.fromEntries(Object.entries(found).filter(([name]) => row?.[name] === undefined)) })));
    draw();
    const undo = button('Undo', () => {
      put(before);
      said.replaceChildren();
      draw();
      copy.focus();
    }, { class: 'quiet', 'aria-label': 'Undo: copied to all rows' });
    said.replaceChildren('Copied. Change what differs. ', undo);
    undo.focus();
    speak('Copied. Change what differs.');
  }, { class: 'quiet' });
  const element = h('div', { class: 'tools' }, copy, said);
  draw();
  return {
    element,
    /** Something else was typed: the way back from the copy would take it along. */
    typed() {
      said.replaceChildren();
      draw();
    },
  };
}
