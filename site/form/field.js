// One input of a form: label, control, where its value comes from, help, and
// what is wrong with it. The schema says which control it is.

import { button, h, hold, steady } from '../kit/dom.js';
import { currencyIn, eitherAmount, readMoney } from '../kit/money.js';
import { speak } from '../kit/speak.js';
import { inHand } from '../store/shelf.js';
import { brief } from './origins.js';
import { seekable } from './seek.js';
import { exampleIn, unitFor } from './units.js';
import { choices, isChoice, isNumber, meant, types } from './values.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Choices} Choices */
/** @typedef {import('../../wasm/marinecalc.js').Units} Units */

/**
 * What a form is made from.
 * @typedef {object} FormOptions
 * @property {Schema} root where $ref looks
 * @property {Schema} schema of the object the form fills
 * @property {Json} value what was typed before
 * @property {string} prefix
 * @property {import('../../wasm/marinecalc.js').Units} units
 * @property {import('../../wasm/marinecalc.js').Choices} choices
 * @property {import('./units.js').Reader} read what was typed for a quantity
 * @property {boolean} [folds] whether groups are folded, as in a long form
 * @property {{ [member: string]: string }} [places] titles of the groups of inputs, by members of the boat file
 * @property {(pointer: string) => { value?: unknown, date?: string } | undefined} [known] what the boat gives of what is asked for there
 * @property {(value: Json) => void} changed
 */

/**
 * What a field needs to know of the form it stands in.
 * @typedef {object} Setting
 * @property {string} prefix before every id, so that two forms never share one
 * @property {Units} units
 * @property {Choices} choices
 * @property {import('./units.js').Reader} read what was typed for a quantity
 * @property {(pointer: string) => unknown} typed what was typed there
 * @property {(pointer: string, value: unknown) => void} change
 */

/** Units of which people write fractions or words, 3/8 in, 1/4 turn, 3 o'clock; without one it may be 2:1 or 38 EUR. */
const SPELT = /^(in|turn|°|deg|o'clock|)$/;

const THUMB = 300; // ms that a thumb takes to come off the next field

export class Field {
  /** @type {HTMLInputElement | HTMLSelectElement} */
  control;
  element;
  #from;
  #wrong;
  #needed;
  /** Whether what is wrong is told to the ear alone, so that nothing moves under the thumb while one types. */
  #typing = false;
  #which = h('p', { class: 'which' });
  #free = () => {};
  #setting;
  /** What stands here when nothing is typed, and where from. @type {[string, string]} */
  #origin = ['', ''];
  /** @type {HTMLOptionElement[]} */
  #options = [];
  #readAs = ''; // what a bare amount was taken for
  /** What showOrigin and showWrong drew last: what stands there already costs no layout. */
  #drawn = '';
  #told = '';
  #fit = '[null,null]'; // of all picks

  /**
   * @param {Setting} setting
   * @param {string} pointer
   * @param {Schema} schema
   * @param {string} name used as the title when the schema has none
   * @param {boolean} required the schema of its row or group asks for it
   */
  constructor(setting, pointer, schema, name, required) {
    this.pointer = pointer;
    this.schema = schema;
    this.title = schema.title ?? name;
    this.required = required;
    this.#setting = setting;
    const id = setting.prefix + pointer.replaceAll('/', '-');
    const unit = unitFor(schema, setting.units);

    this.#from = h('p', { class: 'from', id: `${id}-from` });
    this.#wrong = h('p', { class: 'wrong', id: `${id}-wrong` });
    this.#needed = h('span', { class: 'needed', hidden: true }, 'needed');
    const help = [schema.description, unit && `A bare number is read as ${unit}.`].filter(Boolean).join(' ');
    const about = { id, 'aria-describedby': `${id}-wrong ${id}-from` + (help ? ` ${id}-help` : '') };
    this.control = isChoice(schema) ? this.#choice(about) : this.#text(about, unit);
    this.element = h(
      'div',
      { class: this.#isLong() ? 'field long' : 'field' },
      h(
        'label',
        { for: id },
        this.title,
        schema.quantity && schema.symbol && h('span', { class: 'symbol' }, ' ', schema.symbol),
        unit && h('span', { class: 'unit-said' }, `, ${unit}`),
        ' ',
        this.#needed,
      ),
      h('div', { class: 'entry' }, this.control, unit && this.#unit(unit)),
      this.#wrong,
      schema.quantity === 'money' && this.#which,
      this.#from,
      help && h('p', { class: 'help', id: `${id}-help` }, help),
    );
    this.showOrigin('', '');
    this.#askWhich();
  }

  /** Whether something was typed or chosen here. */
  get isFilled() {
    return this.control.value.trim() !== '';
  }

  /** Shows what was typed elsewhere. @param {unknown} value */
  show(value) {
    this.control.value = value === undefined ? '' : String(value);
  }

  /** Puts the picks that do not go with the rest last, under what they do not go with. @param {import('../../wasm/marinecalc.js').Fit} fit */
  narrow({ picks, with: rest }) {
    const { control } = this;
    const fit = JSON.stringify([rest ? picks : null, rest ?? null]);
    if (!(control instanceof HTMLSelectElement) || fit === this.#fit) return;
    this.#fit = fit;
    const { value } = control;
    /** @param {HTMLOptionElement} option */
    const goes = (option) => !rest || option.value === '' || picks.includes(option.value);
    const others = this.#options.filter((option) => !goes(option));
    control.replaceChildren(...this.#options.filter(goes), ...(others.length > 0 ? [h('optgroup', { label: `Others, not for ${rest}` }, ...others)] : []));
    control.value = value;
  }

  /** Types it for the person. @param {string} text */
  fill(text) {
    this.control.value = text;
    this.control.dispatchEvent(new Event('input', { bubbles: true }));
  }

  /** Types it and leaves the field. @param {string} text */
  enter(text) {
    this.fill(text);
    this.control.dispatchEvent(new Event('change'));
  }

  /**
   * Shows where the value comes from when nothing is typed.
   * @param {string} text the value; empty when there is none
   * @param {string} words where from
   */
  showOrigin(text, words) {
    this.#origin = [text, words];
    const drawn = JSON.stringify([text, words, this.#readAs, this.control instanceof HTMLSelectElement ? this.control.value : this.isFilled]);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    const known = text !== '' && !this.isFilled;
    const from = brief(words);
    const chosen = this.control instanceof HTMLSelectElement && text.length > 25; // two lines of it are room enough
    const stands = text !== '' ? (from && !chosen ? `${text} · ${from}` : text) : '';
    this.#from.textContent = '';
    this.#from.classList.toggle('read-as', this.#readAs !== '');
    this.control.classList.toggle('in-use', stands !== '' && !this.isFilled);
    if (this.control instanceof HTMLSelectElement) {
      const nothing = this.control.options[0];
      if (nothing) nothing.textContent = stands || 'Choose…';
      const { length = 0 } = this.control.selectedOptions[0]?.text ?? {};
      this.control.classList.toggle('wordy', length > 15);
      this.control.classList.toggle('wordier', length > 26);
      this.control.style.setProperty('--lines', String(Math.ceil(length / 14)));
    } else {
      this.#from.textContent = known ? `In use, ${words}: ${text}` : this.#readAs;
      const example = exampleIn(this.schema, this.#setting.units);
      this.control.placeholder = stands || (example === undefined ? ' ' : `such as ${example}`);
    }
  }

  /** @param {boolean} needed */
  showNeeded(needed) {
    this.#needed.hidden = !needed;
  }

  /** @param {Problem[]} problems */
  showWrong(problems) {
    const told = problems.map(inWords).join(' ');
    if (told !== this.#told) this.#wrong.textContent = this.#told = told;
    this.#wrong.classList.toggle('unseen', this.#typing);
    if (problems.length > 0) this.control.setAttribute('aria-invalid', 'true');
    else this.control.removeAttribute('aria-invalid');
  }

  /** From now on one types here: no message comes, and one that stands keeps its room. */
  #begun() {
    this.#free = hold(this.control);
    this.#typing = this.#wrong.textContent === '';
    this.#wrong.style.height = this.#typing || this.#wrong.classList.contains('unseen') ? '' : `${this.#wrong.offsetHeight}px`;
  }

  #left() {
    this.#typing = false;
    if (this.#readAs) speak(this.#readAs);
    steady(() => {
      this.#wrong.classList.remove('unseen');
      this.#wrong.style.height = '';
      this.showOrigin(...this.#origin); // and what a bare amount was read as
    });
  }

  /**
   * A problem as it is at this field, which takes a bare number in its own unit.
   * @param {Problem} problem
   * @returns {Problem}
   */
  asHere(problem) {
    const either = this.#either();
    if (either.length > 0) return { ...problem, what: 'Three figures after the point may be cents or thousands', allowed: '', hint: `choose ${either.join(' or ')}` };
    const unit = unitFor(this.schema, this.#setting.units);
    return unit && problem.bare ? { ...problem, bare: unit } : problem;
  }

  /** What an amount that is not certain may be. */
  #either() {
    return this.schema.quantity === 'money' ? eitherAmount(this.control.value) : [];
  }

  /** Asks which of them it is, where it is not certain. */
  #askWhich() {
    this.#which.replaceChildren(...this.#either().map((text) => button(text, () => this.enter(text))));
  }

  /**
   * The unit beside the field; touched, it brings the letters for another one.
   * @param {string} unit
   */
  #unit(unit) {
    const made = h('span', { class: 'unit', 'aria-hidden': 'true' }, unit);
    made.addEventListener('click', () => {
      this.control.inputMode = 'text';
      this.control.focus();
    });
    return made;
  }

  /**
   * The keypad that serves: digits, where a bare figure in the field's unit is
   * what is meant. Some telephones' has no minus, so what may have one gets all keys.
   */
  #keypad() {
    const { schema } = this;
    if (Number(schema.minimum) < 0) return false;
    if (types(schema).includes('integer')) return 'numeric';
    if (!schema.quantity) return isNumber(schema) ? 'decimal' : false;
    return SPELT.test(unitFor(schema, this.#setting.units)) ? false : 'decimal';
  }

  /** Whether the choices are sentences. */
  #isLong() {
    return this.control instanceof HTMLSelectElement && [...this.control.options].some((o) => o.text.length > 30);
  }

  /**
   * @param {{ [name: string]: string }} about
   * @param {string} unit
   */
  #text(about, unit) {
    const { pointer, schema } = this;
    const kept = this.#setting.typed(pointer);
    const made = h('input', {
      ...about,
      type: schema.format === 'date' ? 'date' : 'text',
      max: schema.format === 'date' && '9999-12-31', // years of four digits, as the boat file has them
      inputmode: this.#keypad(),
      autocomplete: 'off',
      autocapitalize: 'off',
      spellcheck: 'false',
      enterkeyhint: 'next',
    });
    made.value = kept === undefined ? '' : String(kept);
    const { read, change } = this.#setting;
    made.addEventListener('focus', () => this.#begun());
    made.addEventListener('blur', () => (this.#free(), setTimeout(() => document.activeElement === made || this.#left(), THUMB)));
    made.addEventListener('keydown', ({ key }) => key === 'Enter' && setTimeout(() => this.#left())); // after the change that it makes
    made.addEventListener('input', () => {
      this.showOrigin(...this.#origin); // no longer in use
      this.#readAs = '';
      change(pointer, meant(this.#withCurrency(made.value), schema, unit, read));
    });
    // What a bare number was read as becomes visible when the field is left.
    made.addEventListener('change', () => {
      const full = this.#withCurrency(made.value);
      if (full !== made.value) this.#readAs = `Read as ${full}: all amounts of this sheet and boat are in that currency.`;
      made.value = read(full, schema, unit);
      this.#askWhich();
    });
    return made;
  }

  /** A bare amount in the one currency of all others, where there is one; what else is typed as it is. @param {string} text */
  #withCurrency(text) {
    if (this.schema.quantity !== 'money' || readMoney(text, 'EUR') === readMoney(text)) return text;
    return readMoney(text, currencyIn({ sheet: this.#setting.typed(''), boat: inHand().boat }, `/sheet${this.pointer}`, `/boat${this.pointer}`));
  }

  /** @param {{ [name: string]: string }} about */
  #choice(about) {
    const { pointer, schema } = this;
    const options = choices(schema, this.#setting.choices, pointer);
    const kept = this.#setting.typed(pointer);
    const held = kept === undefined ? '' : String(kept);
    if (held !== '' && !options.some((o) => String(o.value) === held)) {
      options.push({ value: kept, words: `${held} (not in the list)` });
    }
    this.#options = [{ value: '', words: 'Choose…' }, ...options].map((o) => h('option', { value: String(o.value) }, o.words));
    const made = h('select', about, ...this.#options);
    made.value = held;
    seekable(made);
    made.addEventListener('change', () =>
      this.#setting.change(pointer, options.find((o) => String(o.value) === made.value)?.value),
    );
    return made;
  }
}

/** The id of a row after its name, which is for files and programs. */
const ROW_ID = / \("[^" ]+"\)/g;

/**
 * A problem as a sentence or two.
 * @param {Problem} problem
 */
export function inWords({ what, allowed, bare, hint }) {
  const both = [allowed, bare && `or a bare number in ${bare}`].filter(Boolean).join(', ');
  const parts = [what, both && `Allowed: ${both}`, hint].filter(Boolean);
  return parts.map((p) => asSentence(/** @type {string} */ (p).replace(ROW_ID, ''))).join(' ');
}

/** @param {string} text */
function asSentence(text) {
  const begun = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?…]$/.test(begun) ? begun : `${begun}.`;
}
