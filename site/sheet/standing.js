// The answer that stands while something typed cannot be used: made from what
// can be, with what was good before in the place of what is not, and with a
// word about what it leaves out.

/** @typedef {import('../../wasm/marinecalc.js').Json} Json */
/** @typedef {import('../../wasm/marinecalc.js').Sheet} Sheet */
/** @typedef {import('../../wasm/marinecalc.js').Problem} Problem */

export class Standing {
  /** What was typed when it last could be used. @type {Json} */
  #good = {};
  #read;
  /** What was typed the last time. @type {Json | undefined} */
  #last;
  /** The input that is being typed, and what was good before: of half a word nothing is held. */
  #editing = '';
  /** @type {Json} */
  #settled = {};
  /** What the answer is made from. @type {Json} */
  used = {};
  /** @type {Sheet | null} */
  #sheet = null;

  /** @param {() => Json | null} read what was typed without the places at which nothing was read */
  constructor(read) {
    this.#read = read;
  }

  /** Another input is gone to: what it has now is what it had before. */
  settle() {
    this.#editing = '';
    this.#settled = this.#good;
  }

  /**
   * The sheet to show, what is wrong, whether the sheet is the one from before,
   * and the inputs that it goes without or takes as they were. It yields what is
   * to be run; one at a time is taken, to its end.
   * @param {Json} typed
   * @returns {Generator<Json, { sheet: Sheet | null, problems: Problem[], old: boolean, without: string[], held: string[] }, import('../../wasm/marinecalc.js').RunReply | import('../../wasm/marinecalc.js').Refusal>}
   */
  *take(typed) {
    const changed = Object.keys({ ...this.#last, ...typed }).filter((n) => JSON.stringify(this.#last?.[n]) !== JSON.stringify(typed[n]));
    if (this.#last && changed.length > 0 && changed.join() !== this.#editing) {
      this.settle();
      this.#editing = changed.join();
    }
    this.#last = typed;
    const sparse = this.#read(); // of the same moment
    let reply = yield typed;
    let used = typed;
    const read = reply.ok ? null : sparse;
    const short = read && (yield read);
    if (read && short?.ok) [reply, used] = [short, read];
    if (reply.ok) {
      this.#good = this.used = used;
      this.#sheet = reply.sheet;
      return { sheet: reply.sheet, problems: [], old: false, without: [], held: [] };
    }
    const { problems } = reply;
    const without = [...new Set(problems.map(({ where, choose }) => (choose && !Object.hasOwn(typed, where.slice(1)) ? choose : where.split('/')[1] ?? '')))].filter((name) => name !== '' && name !== 'boat');
    const wrong = without.filter((name) => Object.hasOwn(typed, name) || Object.hasOwn(this.#good, name));
    /** @type {string[]} */
    const held = [];
    if (wrong.length > 0) {
      const usable = { ...typed };
      for (const name of wrong) {
        const good = this.#sheet ? (name === this.#editing ? this.#settled : this.#good)[name] : undefined;
        if (good === undefined || JSON.stringify(good) === JSON.stringify(typed[name])) delete usable[name]; // or it is not it that was changed
        else usable[name] = good;
        if (this.#sheet && JSON.stringify(good) !== JSON.stringify(typed[name])) held.push(name); // also one that was not typed: a table or the boat gives it
      }
      const again = yield usable;
      if (again.ok) {
        [this.#sheet, this.used] = [again.sheet, usable];
        return { sheet: again.sheet, problems, old: false, without: without.filter((name) => !held.includes(name)), held };
      }
    }
    return { sheet: this.#sheet, problems, old: true, without, held: [] };
  }
}
