// The page: starts the calculator, then shows the view that the address's
// hash names, so that the browser's own back and forward work.

import { start } from '../wasm/marinecalc.js';
import { inWords } from './form/field.js';
import { reader } from './form/units.js';
import { openAside } from './kit/aside.js';
import { had, within } from './kit/asking.js';
import { button, byId, h, painted } from './kit/dom.js';
import { openHeader } from './kit/header.js';
import { lenient } from './kit/lenient.js';
import { keepOffline } from './kit/offline.js';
import { whenAtRest } from './kit/rest.js';
import { speak } from './kit/speak.js';
import { unpack } from './kit/unpack.js';
import { cardOf, makeCardsForPrint } from './sheet/card.js';
import { openFoldsForPrint, showWhatOpens } from './sheet/folds.js';
import { openSettings } from './store/settings.js';
import { inHand, nameOf, openShelf } from './store/shelf.js';
import { noteUsed } from './store/used.js';
import { blankOf, firstOf } from './views/asks.js';
import { showBefore } from './views/before.js';
import { showBoat } from './views/boat.js';
import { showCalculation } from './views/calculation.js';
import { showChecks } from './views/checks.js';
import { showCompare } from './views/compare.js';
import { showHome } from './views/home.js';
import { keepingBanner } from './views/keeping.js';
import { showList } from './views/list.js';
import { showPart } from './views/part.js';
import { showProcedure } from './views/procedure.js';
import { showReadings } from './views/readings.js';
import { showSurvey } from './views/survey.js';
import { undrawn } from './views/undrawn.js';

/** @typedef {import('./app.js').App} App */

const PATIENCE = 5000; // ms for the worker, where the page's own calculator could answer

const main = byId('view', HTMLElement);
const header = openHeader();

async function open() {
  const build = byId('module', HTMLScriptElement).dataset.sum ?? '';
  let show = () => {}; // until there is a view
  openSettings(() => show());
  const banner = keepingBanner(() => show());
  await openShelf({
    keeping: banner.keeping,
    changedElsewhere: (id) => id === inHand().id && banner.changed(),
  });
  const [view, name] = whereTo();
  try {
    if (showBefore(main, view, name, build)) await painted();
  } catch (error) {
    console.warn(error); // the view itself follows
  }
  const boats = unpack('boats', 'application/json').json();
  const compiled = WebAssembly.compileStreaming(unpack('module', 'application/wasm'));
  const begun = compiled.then(start).then((c) => ({ version: c.version, ready: () => c.ready(), call: (/** @type {any} */ request) => c.call(lenient(request)) }));
  const { aside, free } = openAside(begun, compiled, /** @type {any} */ (globalThis).asideProgram);
  // The worker answers what the view asks first while the page's own calculator starts.
  const early = navigator.hardwareConcurrency > 1 ? had(opening(), aside) : undefined;
  const started = await begun;
  const none = () => undefined;
  let ahead = (await within(early, PATIENCE)) ?? none;
  /** @type {import('../wasm/marinecalc.js').Calculator} */
  const calculator = { ...started, call: (/** @type {any} */ request) => ahead(request) ?? started.call(request) };
  const contents = calculator.call({ ask: 'contents' });
  if (!contents.ok) throw new Error(contents.problems.map(inWords).join(' '));
  /** @type {App['ask']} */
  const ask = (request) => (free() ? aside(request) : Promise.resolve(calculator.call(request)));
  const app = { build, calculator, aside, free, ask, contents, read: reader(calculator), demonstrationBoats: await boats, redraw: () => show() };
  let last = '';
  show = () => {
    last = location.hash;
    banner.shown();
    route(app);
  };
  show();
  addEventListener('hashchange', async () => {
    const to = location.hash;
    if (to === last) return;
    if (free()) ahead = (await within(had(firstOf(...whereTo()), aside), PATIENCE)) ?? none;
    if (to === last || to !== location.hash) return; // it is there, or another is gone to
    show();
    scrollTo(0, 0);
    main.querySelector('h1')?.focus();
  });
  // The worker answered so far: what the first request to the page's own reads, it reads while nobody waits.
  if (early) whenAtRest(() => void started.call(blankOf('bolt-preload')));
  keepOffline(banner.newVersion).catch(console.warn);
}

/**
 * Shows what the hash names.
 * @param {App} app
 */
function route(app) {
  const [view, name] = whereTo();
  main.replaceChildren();
  cardOf(null);
  speak(''); // what the view before said
  const views = { part: showPart, calculations: showList, boat: showBoat, survey: showSurvey, compare: showCompare, checks: showChecks, readings: showReadings, procedure: showProcedure, sheet: showCalculation };
  const showView = Object.hasOwn(views, view) ? views[/** @type {keyof typeof views} */ (view)] : showHome;
  let title = '';
  try {
    title = showView(app, main, name);
  } catch (error) {
    console.error(error);
    title = undrawn(main, error, () => route(app));
  }
  document.title = `${title} · marinecalc`;
  main.querySelector('h1')?.setAttribute('tabindex', '-1');
  noteUsed(location.hash, main.querySelector('h1')?.textContent ?? title);
  const { boat } = inHand();
  header.shown(Object.keys(boat).length > 0 ? nameOf(boat) : 'No boat yet');
  const current = name === 'fault-finding' ? 'fault' : name === 'work-plan' ? 'plan' : { sheet: 'calculations', part: 'home', '': 'home' }[view] ?? view;
  for (const link of document.querySelectorAll('[data-view]')) {
    if (link.getAttribute('data-view') === current) link.setAttribute('aria-current', 'page');
    else link.removeAttribute('aria-current');
  }
}

/** What is asked before there is a first view. */
function* opening() {
  yield /** @type {const} */ ({ ask: 'contents' });
  yield* firstOf(...whereTo());
}

/**
 * The view that the hash names, and what of it.
 * @returns {[string, string]}
 */
function whereTo() {
  const [view = '', name = ''] = location.hash.split('/').slice(1).map(decoded);
  return [view, name];
}

/**
 * A part of the hash as it was meant, or as it stands.
 * @param {string} part
 */
function decoded(part) {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

/** @param {unknown} error */
function fail(error) {
  main.replaceChildren(
    h('h1', {}, 'The calculator could not start'),
    h('p', {}, String(error)),
    h('p', {}, 'This page needs a browser with WebAssembly and DecompressionStream, which all have had since 2023.'),
    button('Try again', () => location.reload()),
  );
}

document.querySelector('.skip')?.addEventListener('click', (event) => {
  event.preventDefault(); // the hash belongs to the views
  main.focus();
});
openFoldsForPrint();
showWhatOpens();
makeCardsForPrint();
open().catch(fail);
