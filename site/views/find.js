// One field that finds what people type: signs of trouble, calculations, rows
// of tables, parts and work.

import { button, h } from '../kit/dom.js';
import { speak } from '../kit/speak.js';
import { inHand, keepTyped, toSend, typed } from '../store/shelf.js';
import { FAULT, blankOf } from './asks.js';
import { questionWanted } from './fault.js';

/** @typedef {import('../../wasm/marinecalc.js').Hit} Hit */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */

/** What a hit is, as people read it. @type {{ [kind in Hit['kind']]: string }} */
const KINDS = { sign: 'Yes: find the fault', look: 'Check', calculation: 'Calculate', row: 'Use it in', part: 'Part', work: 'Do it', view: 'Open' };

/**
 * The field with what it finds below.
 * @param {import('../app.js').App} app
 */
export function findField(app) {
  const field = h('input', {
    id: 'find',
    type: 'search',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    enterkeyhint: 'go',
    placeholder: 'clunk, drips, 3/8-24 …',
    'aria-describedby': 'find-help',
  });
  const list = h('ul', { class: 'hits', 'aria-label': 'Found', hidden: true });
  const none = h('p', { class: 'hits none', hidden: true }, 'Nothing by these words. Try what it does, where it is, or a size.');
  /** @type {Hit[]} */
  let hits = [];
  const search = async () => {
    const text = field.value.trim();
    const reply = text === '' ? undefined : await app.ask({ ask: 'find', text });
    if (text !== field.value.trim()) return false; // typed on since
    hits = reply?.ok ? (reply.hits ?? []) : [];
    list.replaceChildren(...hits.map((hit) => h('li', {}, hitButton(app, hit))));
    list.hidden = hits.length === 0;
    none.hidden = text === '' || hits.length > 0;
    if (text !== '') speak(hits.length === 0 ? 'Nothing found' : `${hits.length} found. First: ${hits[0]?.title}`);
    return true;
  };
  field.addEventListener('input', () => void search());
  const whole = h(
    'div',
    { class: 'find', role: 'search' },
    h('label', { for: 'find' }, 'Find'),
    h('span', { id: 'find-help', class: 'unseen' }, 'A noise, a drip, a part, a bolt size, a job. What is found stands below.'),
    field,
    list,
    none,
  );
  whole.addEventListener('keydown', (event) => {
    const buttons = [...list.querySelectorAll('button')];
    const at = buttons.indexOf(/** @type {HTMLButtonElement} */ (document.activeElement));
    if (event.key === 'ArrowDown') buttons[Math.min(at + 1, buttons.length - 1)]?.focus();
    else if (event.key === 'ArrowUp') (at > 0 ? buttons[at - 1] : field)?.focus();
    else if (event.key === 'Enter' && document.activeElement === field) void search().then((drawn) => drawn && list.querySelector('button')?.click());
    else if (event.key === 'Escape' && field.value !== '') {
      field.value = '';
      void search();
      field.focus();
    } else return;
    event.preventDefault();
  });
  return whole;
}

/**
 * What else a row sets: what the hit names, or what its size brings along, as a
 * nut 3/8-24 that was found by other words its thread.
 * @param {import('../app.js').App} app
 * @param {Hit} hit
 */
async function besidesOf(app, { kind, title, calculation, input, id, with: named = [] }) {
  const [size] = /\d+(\/\d+)?-\d+$/.exec(title.split(',')[0] ?? '') ?? [];
  if (kind !== 'row' || named.length > 0 || !size) return named;
  const reply = await app.ask({ ask: 'find', text: size });
  const same = reply.ok && reply.hits?.find((b) => b.kind === 'row' && b.calculation === calculation && b.input === input && b.id === id);
  return (same && same.with) || [];
}

/**
 * @param {import('../app.js').App} app
 * @param {Hit} hit
 */
function hitButton(app, hit) {
  const made = button('', () => void go(app, hit), { class: 'hit', 'data-hit': `${hit.kind}/${hit.id}` });
  made.append(
    h('span', { class: 'hit-title' }, [hit.title, ...(hit.with ?? []).flatMap((w) => w.title ?? [])].join(' + ')),
    h('span', { class: 'hit-kind' }, hit.kind === 'row' ? `${KINDS.row} ${hit.text}` : KINDS[hit.kind]),
  );
  return made;
}

/**
 * Goes where a hit leads. A sign of trouble is answered with yes on the way, a
 * row picked.
 * @param {import('../app.js').App} app
 * @param {Hit} hit
 */
async function go(app, hit) {
  const { kind, id, calculation = '', input = '' } = hit;
  const besides = await besidesOf(app, hit);
  const { id: boat } = inHand();
  if (kind === 'sign') {
    const { answers = noted(app), ...others } = /** @type {{ answers?: Json[] }} */ (typed(boat, 'fault-finding'));
    const rest = answers.filter((a) => a.evidence !== id);
    keepTyped(boat, 'fault-finding', { ...others, answers: [...rest, { evidence: id, answer: 'yes' }] });
    questionWanted.sign = id;
  }
  if (kind === 'row') keepTyped(boat, calculation, { ...typed(boat, calculation), ...Object.fromEntries(besides.map((b) => [b.input, b.id])), [input]: id });
  const names = { sign: 'sheet/fault-finding', look: 'sheet/fault-finding', calculation: `sheet/${id}`, row: `sheet/${calculation}`, part: `part/${id}`, work: `procedure/${id}`, view: id };
  if (kind === 'look') questionWanted.id = id;
  location.hash = `#/${names[kind]}`;
}

/**
 * The answers that stand with the boat already.
 * @param {import('../app.js').App} app
 * @returns {Json[]}
 */
function noted(app) {
  const blank = app.calculator.call(blankOf(FAULT, toSend(inHand().boat)));
  const value = blank.ok ? blank.given?.answers?.value : undefined;
  return Array.isArray(value) ? /** @type {Json[]} */ (value) : [];
}
