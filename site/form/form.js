// A form drawn from a schema: objects become groups, lists become rows that
// can be added and taken away, everything else becomes a field.

import { today } from '../kit/dates.js';
import { bound, button, h, say, steady } from '../kit/dom.js';
import { at, below, count, names, trimmed, withAt } from '../kit/pointer.js';
import { offerAlike } from './alike.js';
import { clockFace, placeOf, readAlone, roundOf } from './clock.js';
import { Field, inWords } from './field.js';
import { inGroups } from './groups.js';
import { chosenInstead, columns, freshRow, isShort, named, opened, resolved, starters } from './rows.js';
import { standing, types } from './values.js';
import { visit } from './visit.js';

/** @typedef {import('../../wasm/marinecalc.js').Schema} Schema */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */
/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('./field.js').FormOptions} FormOptions */
/** @typedef {import('./field.js').Setting} Setting */
/** @typedef {import('./problems.js').Taken} Taken */

export class Form {
  /** @type {Map<string, Field>} */
  fields = new Map();
  /** Groups and lists, which can be wrong as a whole. @type {Map<string, HTMLElement>} */
  #wholes = new Map();
  /** Lists, and the words for where their rows come from. @type {Map<string, HTMLElement>} */
  #lists = new Map();
  /**
   * What a list's button is told: whether its entries come from elsewhere now.
   * @type {Map<string, (elsewhere: boolean) => void>}
   */
  #adders = new Map();
  /** Lists that a clock face is the form of. @type {Map<string, import('./clock.js').Round>} */
  #rounds = new Map();
  /** Rows whose fields are made when they are first opened. @type {Map<string, () => void>} */
  #unmade = new Map();
  /** @type {import('./origins.js').Origins} */
  #origins = {};
  #clean = true; // whether nothing is marked
  #root;
  #changed;
  #known;
  #listed; // whether the boat gives a list of what is asked
  #folds;
  /** @type {Setting} */
  #setting;

  /** @param {FormOptions} options */
  constructor({ root, schema, value, prefix, units, choices, read, folds, places = {}, known, changed }) {
    this.value = value;
    this.#root = root;
    this.#changed = changed;
    this.#known = known ?? (() => undefined);
    this.#listed = schema.asks?.some((name) => Array.isArray(this.#known(below('', name))?.value)) ?? false;
    this.#folds = folds ?? false;
    this.#setting = {
      prefix,
      units,
      choices,
      read,
      typed: (pointer) => at(this.value, pointer),
      change: (pointer, put) => this.#put(pointer, put),
    };
    const asked = schema.asks;
    this.element = h('div', { class: asked ? 'form asked' : 'form' }, ...(asked ? this.#some(schema, asked) : this.#inside(schema, '')));
    this.rest = h('div', { class: 'form rest' }, ...(asked ? this.#others(schema, asked, places) : []));
  }

  /**
   * The inputs of those names, in that order.
   * @param {Schema} schema
   * @param {string[]} names
   */
  #some(schema, names) {
    return names.flatMap((name) => {
      const inner = schema.properties?.[name];
      return inner ? [this.#draw(inner, below('', name), name, schema.needs?.includes(name) ?? false)] : [];
    });
  }

  /**
   * The inputs that are not asked at once, folded by group.
   * @param {Schema} schema
   * @param {string[]} asked
   * @param {{ [member: string]: string }} places
   */
  #others(schema, asked, places) {
    const all = Object.entries(schema.properties ?? {}).filter(([name]) => !asked.includes(name));
    return inGroups(all.map(([name, inner]) => [name, this.#resolved(inner)]), places).map(([title, inside]) => {
      const typed = inside.filter(([name]) => at(this.value, below('', name)) !== undefined).length;
      const fields = this.#some(schema, inside.map(([name]) => name));
      return h('details', { class: 'fold' }, h('summary', {}, `${title} (${inside.length}${typed > 0 ? `, ${typed} typed` : ''})`), ...fields);
    });
  }

  /**
   * Takes in what the calculator said: marks what is wrong and what is needed
   * at its place, and tells both for a summary. A problem where nothing was
   * typed yet is no mistake, only something still needed.
   * @param {Problem[]} problems
   * @returns {Taken}
   */
  take(problems) {
    /** @type {Taken} */
    const taken = { wrong: [], missing: [], loose: [] };
    /** @type {Set<Field>} */
    const needed = new Set();
    this.#make(problems);
    for (const problem of problems) {
      const field = chosenInstead(problem, this.fields) ?? this.fields.get(problem.where);
      const within = this.#emptyWithin(problem.where);
      const whole = this.#wholes.get(problem.where)?.parentElement;
      if (field && !field.isFilled && problem.kind === 'missing') needed.add(field);
      else if (field) taken.wrong.push({ control: field.control, title: this.#titled(field), problem: field.asHere(problem) });
      else if (within.length > 0) within.forEach((f) => needed.add(f));
      else if (whole) {
        const control = whole.querySelector('input, select, button');
        const place = { control: /** @type {HTMLElement} */ (control), title: whole.dataset.title ?? '' };
        if (at(this.value, problem.where) === undefined && problem.kind === 'missing') taken.missing.push(place);
        else taken.wrong.push({ ...place, problem });
      } else taken.loose.push(problem);
    }
    if (!this.#clean || problems.length > 0) {
      steady(() => {
        for (const field of this.fields.values()) {
          field.showNeeded(needed.has(field));
          field.showWrong(taken.wrong.filter((w) => w.control === field.control).map((w) => w.problem));
        }
        for (const [pointer, place] of this.#wholes) say(place, taken.wrong.filter(({ problem }) => problem.where === pointer).map(({ problem }) => inWords(problem)).join(' '));
      });
    }
    this.#clean = problems.length === 0;
    taken.missing.unshift(...[...needed].map((f) => ({ control: f.control, title: this.#titled(f), name: f.title })));
    for (const list of [taken.missing, taken.wrong]) list.sort((a, b) => (a.control.compareDocumentPosition(b.control) & Node.DOCUMENT_POSITION_PRECEDING ? 1 : -1));
    return taken;
  }

  /**
   * Shows where the values come from that were not typed.
   * @param {import('./origins.js').Origins} origins by name of the input
   */
  showOrigins(origins) {
    this.#origins = origins;
    for (const field of this.fields.values()) {
      const { text, words } = origins[field.pointer.slice(1)] ?? standing(field.schema, this.#setting.choices);
      field.showOrigin(text, words);
    }
    for (const [pointer, place] of this.#lists) {
      const origin = at(this.value, pointer) === undefined ? origins[pointer.slice(1)] : undefined;
      say(place, origin ? bound(`${[origin.words, origin.of].filter(Boolean).join(', ')}: ${origin.text}`) : '');
      this.#adders.get(pointer)?.(origin !== undefined);
    }
  }

  /** What stands for an input on the page. @param {string} pointer */
  placeOf = (pointer) => this.fields.get(pointer)?.element ?? this.#lists.get(pointer)?.parentElement;

  /** @param {{ [name: string]: import('../../wasm/marinecalc.js').Fit }} fits by name of the input */
  narrow(fits) {
    for (const [name, fit] of Object.entries(fits)) this.fields.get(below('', name))?.narrow(fit);
  }

  /** Fields below a place that its schema asks for and that are empty. @param {string} pointer */
  #emptyWithin(pointer) {
    return [...this.fields.values()].filter((f) => f.required && !f.isFilled && f.pointer.startsWith(`${pointer}/`));
  }

  /** @param {Field} field */
  #titled(field) {
    const row = field.element.closest('.row');
    if (!(row instanceof HTMLElement) || !row.dataset.title) return field.title;
    const place = placeOf(this.value, this.#rounds, field.pointer, this.#setting.read);
    return place ? `${field.title} at ${place}` : `${field.title}, ${row.dataset.title}`;
  }

  /**
   * @param {string} pointer
   * @param {unknown} put
   */
  #put(pointer, put) {
    this.value = /** @type {Json} */ (withAt(this.value, pointer, put) ?? {});
    this.#changed(this.value);
  }

  /**
   * The places inside an object, those of level detail folded away.
   * @param {Schema} schema
   * @param {string} pointer
   * @returns {HTMLElement[]}
   */
  #inside(schema, pointer) {
    const all = Object.entries(schema.properties ?? {});
    const needed = new Set([...(schema.needs ?? []), ...(schema.required ?? [])]);
    /** @param {[string, Schema][]} some */
    const draw = (some) => some.map(([name, inner]) => this.#draw(inner, below(pointer, name), name, needed.has(name)));
    const folded = all.filter(([, inner]) => this.#resolved(inner).level === 'detail');
    const open = all.filter(([, inner]) => this.#resolved(inner).level !== 'detail');
    if (folded.length === 0) return draw(open);
    const typed = folded.some(([name]) => at(this.value, below(pointer, name)) !== undefined);
    const fold = h(
      'details',
      { class: 'fold', open: typed },
      h('summary', {}, `More inputs (${folded.length})`),
      ...draw(folded),
    );
    return [...draw(open), fold];
  }

  /**
   * @param {Schema} schema
   * @param {string} pointer
   * @param {string} name
   * @param {boolean} needed
   * @returns {HTMLElement}
   */
  #draw(schema, pointer, name, needed) {
    const inner = this.#resolved(schema);
    if (types(inner).includes('object')) return this.#group(inner, pointer, name);
    if (types(inner).includes('array')) return this.#list(inner, pointer, name, needed);
    const field = new Field(this.#setting, pointer, inner, name, needed);
    this.fields.set(pointer, field);
    return field.element;
  }

  /**
   * @param {Schema} schema
   * @param {string} pointer
   * @param {string} name
   */
  #group(schema, pointer, name) {
    const title = schema.title ?? name;
    const wrong = h('p', { class: 'wrong' });
    this.#wholes.set(pointer, wrong);
    const inside = [wrong, schema.description && h('p', { class: 'help' }, schema.description), ...this.#inside(schema, pointer)];
    if (!this.#folds) return h('fieldset', { class: 'group', 'data-title': title }, h('legend', {}, title), ...inside);
    const given = count(at(this.value, pointer));
    return h(
      'details',
      { class: 'fold' },
      h('summary', {}, given > 0 ? `${title} (${given} given)` : title),
      h('div', { class: 'group', role: 'group', 'aria-label': title, 'data-title': title }, ...inside),
    );
  }

  /**
   * @param {Schema} schema
   * @param {string} pointer
   * @param {string} name
   * @param {boolean} needed
   */
  #list(schema, pointer, name, needed) {
    const title = schema.title ?? name;
    const item = this.#resolved(schema.items ?? { type: 'string' });
    const single = item.title ?? title;
    const wrong = h('p', { class: 'wrong' });
    const from = h('p', { class: 'from' });
    this.#wholes.set(pointer, wrong);
    this.#lists.set(pointer, from);
    const rows = h('div', { class: 'rows' });
    const typed = () => {
      const list = at(this.value, pointer);
      return Array.isArray(list) ? /** @type {unknown[]} */ (list) : []; // a file may hold anything
    };

    /** The rows that the boat has, to be changed here; what is read round a face is read anew. */
    const own = () => (round || !given()?.length ? undefined : structuredClone(given()));
    const more = button(`Add: ${single}`, () => {
      const before = typed().length;
      this.#put(pointer, before > 0 ? [...typed(), freshRow(schema, before + 1)] : own() ?? starters(schema));
      draw();
      this.#unmade.get(below(pointer, before))?.();
      const control = rows.children[before]?.querySelector('input, select');
      if (control instanceof HTMLElement) visit(control);
    });
    this.#adders.set(pointer, (elsewhere) => say(more, elsewhere ? `Change here: ${title}` : `Add: ${single}`));
    /** @param {number} i */
    const takeAway = (i) => {
      const left = typed().filter((_, j) => j !== i);
      this.#put(pointer, left.length > 0 ? left : undefined);
      draw();
      more.focus();
    };
    const draw = () => {
      this.#forget(`${pointer}/`);
      const drawn = typed().map((_, i) => this.#row(item, below(pointer, i), `${single} ${i + 1}`, () => takeAway(i)));
      rows.replaceChildren(...drawn);
      face?.draw();
      alike?.typed();
      more.disabled = drawn.length >= (schema.maxItems ?? 200);
    };

    // Rows that are needed stand there from the start.
    if (needed && typed().length === 0 && !this.#known(pointer)) {
      this.value = /** @type {Json} */ (withAt(this.value, pointer, starters(schema)));
    }
    const parts = Object.entries(item.properties ?? {}).map(([name, inner]) => /** @type {[string, Schema]} */ ([name, this.#resolved(inner)]));
    const round = roundOf(schema, parts);
    if (round) this.#rounds.set(pointer, round);
    const given = () => {
      const value = this.#known(pointer)?.value;
      return Array.isArray(value) && typed().length === 0 ? value : undefined;
    };
    const { units, read } = this.#setting;
    const face =
      round && clockFace({ title, round, given, ofToday: () => this.#known(pointer)?.date === today(), units, read, fresh: () => /** @type {Json[]} */ (starters(schema)), rows: () => /** @type {Json[]} */ (typed()), put: (list) => this.#putRows(pointer, list, draw) });
    const alike = offerAlike(names(pointer).at(-1) ?? '', parts, () => /** @type {Json[]} */ (typed()), (list) => this.#putRows(pointer, list, draw));
    draw();
    if (alike) for (const kind of ['input', 'change']) rows.addEventListener(kind, alike.typed);
    /** @type {(HTMLElement | false)[]} */
    const list = [columns(parts), rows, alike?.element ?? false, more];
    return h(
      'fieldset',
      { class: 'list', 'data-title': title },
      h('legend', {}, title),
      wrong,
      from,
      schema.description && h('p', { class: 'help' }, schema.description),
      ...(face ? [opened(given() === undefined && (typed().length > 0 || !this.#listed), 'On the face', face.element), opened(false, 'As a list', ...list)] : list),
    );
  }

  /**
   * What was typed without the places of a clock face at which nothing was read;
   * null where each was.
   */
  read() {
    return readAlone(trimmed(this.value) ?? {}, this.#rounds);
  }

  /**
   * Puts rows that were typed elsewhere; their fields are drawn anew only where
   * there are more or fewer of them.
   * @param {string} pointer
   * @param {Json[]} list
   * @param {() => void} draw
   */
  #putRows(pointer, list, draw) {
    const before = at(this.value, pointer);
    this.#put(pointer, list);
    if (!Array.isArray(before) || before.length !== list.length) return draw();
    for (const [where, field] of this.fields) if (where.startsWith(`${pointer}/`)) field.show(at(this.value, where));
  }

  /** Lets go of the fields of rows that are drawn anew. @param {string} prefix */
  #forget(prefix) {
    for (const known of [this.fields, this.#wholes, this.#lists, this.#adders, this.#unmade]) {
      for (const pointer of [...known.keys()]) if (pointer.startsWith(prefix)) known.delete(pointer);
    }
  }

  /**
   * Makes the fields of rows in which something is to be put right.
   * @param {Problem[]} problems
   */
  #make(problems) {
    for (const [pointer, make] of [...this.#unmade]) {
      if (problems.some(({ where }) => where.startsWith(`${pointer}/`))) make();
    }
  }

  /**
   * One row of a list. A long one is folded under its title and its first
   * value, such as the date of a reading, and its fields are made when it is
   * opened: a log has hundreds of rows of many fields.
   * @param {Schema} item
   * @param {string} pointer
   * @param {string} title
   * @param {() => void} takeAway
   */
  #row(item, pointer, title, takeAway) {
    const isObject = types(item).includes('object');
    const compact = !isObject || isShort(Object.values(item.properties ?? {}).map((inner) => this.#resolved(inner)));
    const row = () =>
      h(
        'div',
        { class: compact ? 'row compact' : 'row', role: 'group', 'aria-label': title, 'data-title': title.toLowerCase() },
        ...(isObject ? this.#inside(item, pointer) : [this.#draw(item, pointer, title, false)]),
        button('Remove', takeAway, { class: 'quiet', 'aria-label': `Remove ${title.toLowerCase()}` }),
      );
    if (compact) return row();
    const head = h('summary', {}, named(title, at(this.value, pointer)));
    const fold = h('details', { class: 'fold' }, head);
    fold.addEventListener('change', () => say(head, named(title, at(this.value, pointer))));
    const make = () => {
      if (!this.#unmade.delete(pointer)) return;
      fold.append(row());
      this.showOrigins(this.#origins);
    };
    this.#unmade.set(pointer, make);
    fold.addEventListener('toggle', make);
    return fold;
  }

  /** @param {Schema} schema */
  #resolved(schema) {
    return resolved(this.#root, schema);
  }
}
