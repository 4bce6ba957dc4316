// The boat on cards, one for each part of the line: what is still open first,
// in the order in which it is read off the boat, the rest behind one line. A
// card's fields are made when it is opened.

import { inWords } from '../form/field.js';
import { Form } from '../form/form.js';
import { h } from '../kit/dom.js';
import { at, tidied } from '../kit/pointer.js';
import { units } from '../store/settings.js';
import { toSend } from '../store/shelf.js';

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').BoatAsk} BoatAsk */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */

/**
 * @typedef {object} CardOf
 * @property {string} id
 * @property {string} title
 * @property {string} about
 * @property {string[]} holds members of the boat file
 * @property {BoatAsk[]} asks
 */

/** What cards share: the boat as it is typed. */
export class Cards {
  /** @type {Form[]} */
  #forms = [];
  /** @type {(() => void)[]} */
  #counts = [];
  /** @type {Set<string>} */
  #elsewhere = new Set();
  #app;
  #asked;
  #shown;
  #changed;

  /**
   * @param {import('../app.js').App} app
   * @param {import('../../wasm/marinecalc.js').BoatReply} asked the boat's form
   * @param {Json} boat
   * @param {(from: Json, to: Json) => void} changed
   */
  constructor(app, asked, boat, changed) {
    this.#app = app;
    this.#asked = asked;
    this.#shown = boat;
    this.#changed = changed;
  }

  /** The boat as it is typed. */
  get boat() {
    return this.#shown;
  }

  /** @param {string} pointer */
  #knows(pointer) {
    return at(this.#shown, pointer) !== undefined || this.#elsewhere.has(pointer);
  }

  /**
   * What the boat has in another place, such as a dated reading.
   * @param {string[]} pointers
   */
  has(pointers) {
    this.#elsewhere = new Set(pointers.filter((pointer) => at(this.#shown, pointer) === undefined));
    for (const count of this.#counts) count();
  }

  /**
   * One card.
   * @param {CardOf} of
   * @param {boolean} open
   * @param {boolean} [alone] with what is still open alone, which stands on other cards too
   */
  card({ id, title, about, holds, asks }, open, alone = false) {
    const state = h('span', { class: 'card-known' });
    const count = () => {
      const known = asks.filter(({ pointer }) => this.#knows(pointer)).length;
      state.textContent = asks.length > 0 ? `${known} of ${asks.length} known` : '';
    };
    this.#counts.push(count);
    const wrong = h('div', { role: 'alert' });
    const card = h('details', { class: 'card', 'data-holds': alone ? '' : holds.join(' '), 'data-card': id }, h('summary', {}, h('span', { class: 'card-title' }, title), state));
    const make = () => {
      if (!card.open || card.childElementCount > 1) return;
      const missing = asks.filter((a) => !this.#knows(a.pointer)).map((a) => a.pointer);
      const whole = { type: 'object', properties: Object.fromEntries(holds.map((name) => [name, resolved(this.#asked.schema, this.#asked.schema.properties?.[name] ?? {})])) };
      const first = only(whole, '', (pointer) => missing.includes(pointer));
      const rest = alone ? undefined : missing.length > 0 ? only(whole, '', (pointer) => !missing.includes(pointer), missing) : whole;
      /** @type {Form[]} */
      const forms = [];
      const changed = (/** @type {Json} */ value) => {
        const to = /** @type {Json} */ (tidied(value, this.#shown) ?? {});
        const from = this.#shown;
        this.#shown = to;
        for (const form of this.#forms) form.value = to;
        this.#changed(from, to);
        count();
        void this.#narrow(forms);
        void this.#check(holds, forms, wrong);
      };
      for (const schema of [first, rest]) {
        if (!schema) continue;
        forms.push(new Form({ root: this.#asked.schema, schema, value: this.#shown, prefix: alone ? id : 'boat', units: units(), choices: this.#asked.choices ?? {}, read: this.#app.read, changed }));
      }
      this.#forms.push(...forms);
      const [asksFirst, others] = first ? forms : [undefined, ...forms];
      card.append(
        h(
          'div',
          { class: 'card-inside' },
          about && h('p', { class: 'help' }, about),
          wrong,
          asksFirst && !alone && h('h2', {}, 'Still open'),
          asksFirst?.element,
          others && (asksFirst ? h('details', { class: 'fold' }, h('summary', {}, 'Known, and what is seldom asked'), others.element) : others.element),
        ),
      );
      for (const form of forms) form.showOrigins({});
      void this.#narrow(forms);
      void this.#check(holds, forms, wrong);
    };
    card.addEventListener('toggle', make);
    card.open = open;
    make();
    count();
    return card;
  }

  /** The nuts that go with the coupling bolts' thread stand first, as on the sheet of their torque. @param {Form[]} forms */
  async #narrow(forms) {
    const nut = forms.flatMap(({ fields }) => [...fields.values()]).find(({ pointer }) => /^\/coupling\/.*\bnut$/.test(pointer));
    const now = this.#shown;
    const reply = nut && (await this.#app.ask({ ask: 'fits', calculation: 'bolt-preload', input: {}, boat: toSend(now), units: units() }));
    const fit = now === this.#shown && reply && reply.ok && reply.fits.nut;
    if (fit) nut.narrow(fit);
  }

  /**
   * What is wrong in these members alone: a log of thousands is not looked
   * through with every key.
   * @param {string[]} holds
   * @param {Form[]} forms
   * @param {HTMLElement} place
   */
  async #check(holds, forms, place) {
    const part = () => ({ ...Object.fromEntries(Object.entries(this.#shown).filter(([name]) => holds.includes(name))), name: this.#shown.name ?? 'X' });
    const now = part();
    const reply = await this.#app.ask({ ask: 'boat', boat: now });
    if (JSON.stringify(now) !== JSON.stringify(part())) return; // typed on, and asked again
    const problems = reply.ok ? [] : reply.problems.map((p) => ({ ...p, where: p.where.replace(/^\/boat/, '') }));
    /** @type {Problem[]} */
    let loose = problems;
    for (const form of forms) {
      const taken = form.take(problems);
      loose = loose.filter((p) => taken.loose.includes(p));
    }
    place.replaceChildren(...loose.map((p) => h('p', { class: 'wrong' }, `${p.where} ${inWords(p)}`)));
  }
}

/**
 * The schema with its $ref followed.
 * @param {Schema} root
 * @param {Schema} schema
 * @returns {Schema}
 */
function resolved(root, schema) {
  if (schema.$ref === undefined) return schema;
  const { $ref, ...beside } = schema;
  return { ...resolved(root, /** @type {Schema} */ (at(root, $ref.replace(/^#/, '')) ?? {})), ...beside };
}

/**
 * An object's schema with the places alone that are wanted; undefined where
 * there are none.
 * @param {Schema} schema
 * @param {string} pointer
 * @param {(pointer: string) => boolean} wanted
 * @param {string[]} [without] places that are left out, so that the object around them is gone through
 * @returns {Schema | undefined}
 */
function only(schema, pointer, wanted, without) {
  const kept = Object.entries(schema.properties ?? {}).flatMap(([name, inner]) => {
    const place = `${pointer}/${name}`;
    const gone = without ? without.some((w) => w.startsWith(`${place}/`)) : !wanted(place);
    if (!gone) return wanted(place) ? [[name, inner]] : [];
    const some = inner.properties ? only(inner, place, wanted, without) : undefined;
    return some ? [[name, some]] : [];
  });
  const { asks: _, ...rest } = schema;
  return kept.length > 0 ? { ...rest, properties: Object.fromEntries(kept) } : undefined;
}
