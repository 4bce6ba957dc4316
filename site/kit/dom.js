// Making elements. Text becomes text nodes and nothing here parses HTML, so
// what a boat file or an overlay says can never become markup.

/** @typedef {Node | string | null | undefined | false} Child */
/** @typedef {{ [name: string]: string | number | boolean | null | undefined }} Attributes */

/**
 * An element with attributes (true gives a bare one; false, null and
 * undefined none) and children.
 * @template {keyof HTMLElementTagNameMap} T
 * @param {T} tag
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {HTMLElementTagNameMap[T]}
 */
export function h(tag, attributes, ...children) {
  const made = document.createElement(tag);
  setAttributes(made, attributes);
  made.append(...present(children));
  return made;
}

/**
 * The same for SVG.
 * @template {keyof SVGElementTagNameMap} T
 * @param {T} tag
 * @param {Attributes} [attributes]
 * @param {...Child} children
 * @returns {SVGElementTagNameMap[T]}
 */
export function s(tag, attributes, ...children) {
  const made = document.createElementNS('http://www.w3.org/2000/svg', tag);
  setAttributes(made, attributes);
  made.append(...present(children));
  return made;
}

/** Keeps each figure on the line of its unit, and a day in one piece. @param {string} text */
export const bound = (text) => text.replace(/(\d) (?=\S)/g, '$1\u00a0').replaceAll('US ', 'US\u00a0').replace(/(\d{4}-)(\d\d-)(?=\d)/g, '$1\u2060$2\u2060');

/**
 * A button that does something.
 * @param {string} label
 * @param {(event: Event) => void} act
 * @param {Attributes} [attributes]
 */
export function button(label, act, attributes) {
  const made = h('button', { type: 'button', ...attributes }, label);
  made.addEventListener('click', act);
  return made;
}

/** Puts a text where another stands; what stands there already is not laid out anew. @param {Element} element @param {string} text */
export function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

/**
 * Puts those elements into another in the place of what is there. One that is
 * like one there, and need not be new, stays what it is: nothing of it is laid out anew.
 * @param {Element} parent
 * @param {Element[]} parts
 * @param {(part: Element) => boolean} mayStay
 */
export function replaceUnlike(parent, parts, mayStay) {
  const old = new Set(parent.children);
  const now = parts.map((part) => {
    const like = mayStay(part) && [...old].find((o) => o.isEqualNode(part));
    return (like && old.delete(like) && like) || part;
  });
  for (const gone of old) gone.remove();
  now.forEach((part, i) => parent.children[i] === part || parent.insertBefore(part, parent.children[i] ?? null));
}

/** When what is shown has reached the screen; at once where nobody looks. */
export function painted() {
  return new Promise((done) => {
    requestAnimationFrame(() => requestAnimationFrame(done));
    setTimeout(done, 200);
  });
}

/** Does what may move things, and keeps the control in use where it is on the screen. @param {() => void} act */
export function steady(act) {
  const { activeElement: used } = document;
  const before = used?.getBoundingClientRect().top ?? 0;
  act();
  const moved = (used?.getBoundingClientRect().top ?? before) - before;
  if (moved !== 0) scrollBy(0, moved);
}

/** What ends the newest hold. @type {(() => void) | undefined} */
let holding;

/**
 * Keeps a control where it is on the screen while what stands before it grows
 * or shrinks, until what it gives is called.
 * @param {HTMLElement} control
 */
export function hold(control) {
  const now = () => control.getBoundingClientRect().top;
  let top = now();
  const moved = () => (top = now());
  const sizes = new ResizeObserver(() => (control.isConnected ? now() !== top && scrollBy(0, now() - top) : free()));
  const root = document.documentElement.style;
  const free = () => {
    if (holding === free) root.overflowAnchor = '';
    sizes.disconnect();
    removeEventListener('scroll', moved);
  };
  holding = free;
  root.overflowAnchor = 'none'; // the browser's own way holds what is highest on the screen
  sizes.observe(document.body);
  addEventListener('scroll', moved, { passive: true });
  return free;
}

/**
 * Draws a view anew where it stands; the ear goes to its heading, the eye stays.
 * @param {HTMLElement} main
 * @param {() => void} draw
 */
export function drawAnew(main, draw) {
  const place = scrollY;
  main.replaceChildren();
  draw();
  const heading = main.querySelector('h1');
  heading?.setAttribute('tabindex', '-1');
  heading?.focus({ preventScroll: true });
  scrollTo(0, place);
}

/**
 * The element of the shell with that id, which must be there.
 * @template {Element} E
 * @param {string} id
 * @param {new () => E} type
 * @returns {E}
 */
export function byId(id, type) {
  const found = document.getElementById(id);
  if (!(found instanceof type)) throw new Error(`the page has no ${type.name} "${id}"`);
  return found;
}

/**
 * @param {Element} element
 * @param {Attributes} [attributes]
 */
function setAttributes(element, attributes = {}) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, '');
    else if (value !== false && value != null) element.setAttribute(name, String(value));
  }
}

/** @param {Child[]} children */
function present(children) {
  return /** @type {(Node | string)[]} */ (children.filter(Boolean));
}
