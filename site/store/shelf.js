// The boats kept in this browser, one of which is in hand in this tab. What is
// asked is answered from memory; what is changed goes to the depot at once,
// where it is brought together with what another tab made of the same boat.

import { today } from '../kit/dates.js';
import { openDepot } from './depot.js';
import { forget, keep, keysFrom, recall } from './keep.js';
import { isPlain, merged, same } from './merge.js';
import { unlike } from './names.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {{ [calculation: string]: Json }} Typed what was typed on the sheets of a boat */
/** @typedef {{ id: string, boat: Json, typed: Typed, revision: number }} Kept */
/** @typedef {{ name: string, text: string }} Damaged an entry that is no boat */
/** @typedef {'kept' | 'writing' | 'refused'} Keeping */

/** @type {import('./depot.js').Depot} */
let depot = { lasting: false, all: async () => [], update: () => Promise.reject(new Error('not open')) };

/** What this tab has, by id. @type {Map<string, Kept>} */
const held = new Map();
/** What the depot is known to have. @type {Map<string, Kept>} */
const known = new Map();
/** @type {Map<string, Promise<void>>} */
const writing = new Map();
/** @type {Damaged[]} */
let damaged = [];
let current = '';
let refused = false;

const channel = typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('marinecalc');

/** @type {(state: Keeping) => void} */
let tellKeeping = () => {};
/** @type {(id: string) => void} */
let tellChanged = () => {};

/**
 * Takes the boats out of the depot. Whoever opens is told how keeping goes, and
 * of changes that another tab made to a boat.
 * @param {{ keeping: (state: Keeping) => void, changedElsewhere: (id: string) => void }} told
 */
export async function openShelf({ keeping, changedElsewhere }) {
  tellKeeping = keeping;
  tellChanged = changedElsewhere;
  depot = await openDepot();
  for (const entry of await depot.all().catch(() => [])) take(entry);
  await bringOver();
  await takeUp();
  const last = recall('boat');
  current = typeof last === 'string' && held.has(last) ? last : held.keys().next().value ?? '';
  if (current === '') current = blank();
  channel?.addEventListener('message', ({ data }) => void lookAgain(String(data)));
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && void lookAgain());
  addEventListener('pagehide', leave);
  refused = !depot.lasting;
  tellKeeping(refused ? 'refused' : 'kept');
}

/**
 * @param {unknown} entry of the depot
 * @returns {boolean}
 */
function take(entry) {
  if (isKept(entry)) {
    const kept = { ...entry, typed: isTyped(entry.typed) ? entry.typed : {}, revision: Number(entry.revision) || 0 };
    held.set(kept.id, kept);
    known.set(kept.id, kept);
    return true;
  }
  const name = isPlain(entry) && typeof entry.id === 'string' ? entry.id : `entry ${damaged.length + 1}`;
  const text = isPlain(entry) && typeof entry.damaged === 'string' ? entry.damaged : JSON.stringify(entry, null, 2);
  if (!damaged.some((d) => d.text === text)) damaged.push({ name, text });
  return false;
}

/** Brings over what earlier versions of the page kept, all boats in one entry. */
async function bringOver() {
  const text = recall('boats', (raw) => damaged.push({ name: 'boats', text: raw }));
  if (text === undefined) return;
  const list = Array.isArray(text) ? text : [text];
  let all = true;
  for (const old of list) {
    if (!isKept(old)) {
      damaged.push({ name: 'boat', text: JSON.stringify(old, null, 2) });
      continue;
    }
    const typed = recall(`typed.${old.id}`, (raw) => damaged.push({ name: `typed ${old.id}`, text: raw }));
    if (Object.keys(old.boat).length === 0 && typed === undefined) continue;
    held.set(old.id, { id: old.id, boat: old.boat, typed: isTyped(typed) ? typed : {}, revision: 0 });
    await write(old.id);
    all = all && known.has(old.id);
  }
  if (!all || damaged.length > 0) return; // the old entries stay until all of them lie safe
  for (const old of list) if (isKept(old)) forget(`typed.${old.id}`);
  forget('boats');
}

const LEFT = 'left.';

/** What is not written yet when the page is left goes where it can go at once. */
function leave() {
  for (const [id, mine] of held) {
    const base = known.get(id);
    if (mine !== base && !(base && same(mine, base)) && (base || !isEmpty(mine))) keep(LEFT + id, { mine, base });
  }
}

/** Takes up what was left so. */
async function takeUp() {
  for (const key of keysFrom(LEFT)) {
    const left = recall(key, (raw) => damaged.push({ name: key, text: raw }));
    if (!isPlain(left) || !isKept(left.mine)) continue;
    const { id } = left.mine;
    const base = isKept(left.base) ? left.base : undefined;
    const stored = known.get(id);
    held.set(id, stored ? broughtTogether(base, left.mine, stored) : left.mine);
    await write(id);
    if (known.has(id) && !refused) forget(key);
  }
}

/** An empty boat, which is not kept until something is typed. */
function blank() {
  const id = newId();
  held.set(id, { id, boat: {}, typed: {}, revision: 0 });
  return id;
}

/** What is neither boat nor empty, to be offered as files. */
export function setAside() {
  return damaged;
}

/**
 * The boats on the shelf; an empty one alone where there is none.
 * @returns {Kept[]}
 */
export function boats() {
  return [...held.values()];
}

/**
 * The boat in hand in this tab.
 * @returns {Kept}
 */
export function inHand() {
  const kept = held.get(current);
  if (kept) return kept;
  current = held.keys().next().value ?? blank();
  return /** @type {Kept} */ (held.get(current));
}

/**
 * A boat by its id, as this tab has it; an empty one where it is gone.
 * @param {string} id
 * @returns {Kept}
 */
export function onShelf(id) {
  return held.get(id) ?? { id, boat: {}, typed: {}, revision: 0 };
}

/** @param {string} id */
export function takeInHand(id) {
  if (!held.has(id)) return;
  current = id;
  keep('boat', id);
}

/**
 * Puts a boat on the shelf and takes it in hand. Where another is called
 * alike, it gets a number behind its name.
 * @param {Json} boat
 */
export function add(boat) {
  for (const kept of boats()) if (isEmpty(kept)) held.delete(kept.id);
  const id = newId();
  const named = 'name' in boat ? { ...boat, name: unlike(nameOf(boat), boats().map((k) => nameOf(k.boat))) } : boat;
  held.set(id, { id, boat: named, typed: {}, revision: 0 });
  takeInHand(id);
  void navigator.storage?.persist?.().catch(() => false);
  if (Object.keys(named).length > 0) void write(id);
}

/**
 * Takes a demonstration boat in hand, the one from before where it lies there untouched.
 * @param {Json} boat
 */
export function addOnce(boat) {
  const there = boats().find((k) => same(k.boat, boat));
  if (there) takeInHand(there.id);
  else add(boat);
}

/**
 * Changes a boat: what was changed from one state to another is applied to the
 * boat as it is now, so that nothing that came in between is lost.
 * @param {string} id
 * @param {Json} from the boat that was shown
 * @param {Json} to
 */
export function change(id, from, to) {
  const kept = held.get(id);
  held.set(id, { ...onShelf(id), boat: kept ? merged(from, to, kept.boat) : to });
  void write(id);
}

/**
 * What was typed for a calculation with a boat.
 * @param {string} id
 * @param {string} calculation
 * @returns {Json}
 */
export function typed(id, calculation) {
  const { typed: all } = onShelf(id);
  return (Object.hasOwn(all, calculation) && all[calculation]) || {};
}

/**
 * @param {string} id
 * @param {string} calculation
 * @param {Json} input
 */
export function keepTyped(id, calculation, input) {
  const kept = onShelf(id);
  const { [calculation]: before = {}, ...others } = kept.typed;
  held.set(id, { ...kept, typed: Object.keys(input).length > 0 ? { ...others, [calculation]: input } : others });
  const changed = Object.keys(input).filter((name) => !same(input[name], before[name])).map((name) => `${calculation}/${name}`);
  const old = days(id);
  const stale = [calculation, ...changed].filter((what) => old[what] !== today());
  if (stale.length > 0) keep(`days.${id}`, { ...old, ...Object.fromEntries(stale.map((what) => [what, today()])) });
  void write(id);
}

/** On which day something was typed last, by calculation, and by calculation/input. @param {string} id @returns {{ [calculation: string]: string }} */
export function days(id) {
  const all = recall(`days.${id}`);
  return isPlain(all) ? /** @type {any} */ (all) : {};
}

/**
 * Takes a boat off the shelf, with what was typed for it.
 * @param {string} id
 */
export function remove(id) {
  held.delete(id);
  known.delete(id);
  forget(`days.${id}`);
  void settle(depot.update(id, () => undefined), id);
  if (current === id) takeInHand(held.keys().next().value ?? blank());
}

/**
 * Takes note of what lies in the depot now: of one boat, or of all.
 * @param {string} [only]
 */
async function lookAgain(only) {
  const stored = await depot.all().catch(() => []);
  const there = new Set();
  for (const entry of stored) {
    if (!isKept(entry)) continue;
    there.add(entry.id);
    if ((only && entry.id !== only) || writing.has(entry.id)) continue;
    const mine = held.get(entry.id);
    const base = known.get(entry.id);
    if (base && base.revision === entry.revision) continue;
    if (mine && base && mine !== base) void write(entry.id); // both changed: the depot brings them together
    else take(entry);
    tellChanged(entry.id);
  }
  for (const id of known.keys()) {
    if (there.has(id) || writing.has(id) || (only && id !== only)) continue;
    held.delete(id);
    known.delete(id);
    tellChanged(id);
  }
}

/**
 * Writes a boat, again while it changes meanwhile.
 * @param {string} id
 */
function write(id) {
  const running = writing.get(id);
  if (running) return running;
  const run = settle(put(id), id).finally(() => {
    writing.delete(id);
    const now = held.get(id);
    if (!refused && now && !same(now, known.get(id))) void write(id);
  });
  writing.set(id, run);
  return run;
}

/** @param {string} id */
async function put(id) {
  await new Promise((done) => setTimeout(done)); // the key that changed it is painted first
  const mine = held.get(id);
  if (!mine) return;
  const base = known.get(id);
  const stored = await depot.update(id, (there) => {
    const theirs = isKept(there) ? there : undefined;
    const both = theirs && theirs.revision !== base?.revision ? broughtTogether(base, mine, theirs) : mine;
    return { ...both, id, revision: (Number(theirs?.revision) || 0) + 1 };
  });
  const lies = /** @type {Kept} */ (stored);
  const now = held.get(id);
  known.set(id, lies);
  if (!now) return; // taken off meanwhile
  const both = now === mine ? lies : { ...broughtTogether(mine, now, lies), revision: lies.revision };
  held.set(id, both);
  if (!same(both.boat, now.boat) || !same(both.typed, now.typed)) tellChanged(id);
  channel?.postMessage(id);
}

/**
 * @param {Kept | undefined} base
 * @param {Kept} mine
 * @param {Kept} theirs
 * @returns {Kept}
 */
function broughtTogether(base, mine, theirs) {
  return {
    ...theirs,
    boat: merged(base?.boat ?? {}, mine.boat, theirs.boat),
    typed: merged(base?.typed ?? {}, mine.typed, isTyped(theirs.typed) ? theirs.typed : {}),
  };
}

/**
 * Tells how keeping goes while something is written.
 * @param {Promise<unknown>} act
 * @param {string} id
 */
async function settle(act, id) {
  tellKeeping(refused ? 'refused' : 'writing');
  try {
    await act;
    refused = false;
  } catch {
    refused = true;
  }
  if (refused || [...writing.keys()].every((other) => other === id)) tellKeeping(refused ? 'refused' : 'kept');
}

/**
 * What a boat is called.
 * @param {Json} boat
 */
export function nameOf(boat) {
  return typeof boat.name === 'string' && boat.name.trim() !== '' ? boat.name : 'Boat without a name';
}

/**
 * The boat as the calculator takes it: nothing for an empty one, and never
 * without a name.
 * @param {Json} boat
 * @returns {Json | undefined}
 */
export function toSend(boat) {
  if (Object.keys(boat).length === 0) return;
  if (!asSent.has(boat)) asSent.set(boat, { ...boat, name: nameOf(boat) });
  return asSent.get(boat);
}

const asSent = new WeakMap(); // the same of the same boat, which a worker is handed once

/** An id that no other boat has, in the order of time, also where a page is not served over https. */
function newId() {
  return Date.now().toString(36).padStart(9, '0') + Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, '0')).join('');
}

/** @param {Kept} kept */
function isEmpty({ boat, typed }) {
  return Object.keys(boat).length === 0 && Object.keys(typed).length === 0;
}

/**
 * @param {unknown} value
 * @returns {value is Kept}
 */
function isKept(value) {
  return isPlain(value) && typeof value.id === 'string' && isPlain(value.boat);
}

/**
 * @param {unknown} value
 * @returns {value is Typed}
 */
function isTyped(value) {
  return isPlain(value) && Object.values(value).every(isPlain);
}
