// What runs first: takes the page's style and program, which lie packed beside
// the calculator, and starts it.

import { byId } from './kit/dom.js';
import { unpack } from './kit/unpack.js';
import { light } from './store/settings.js';

async function boot() {
  document.documentElement.dataset.light = light(); // before anything glares
  const style = document.createElement('style');
  const program = document.createElement('script');
  style.textContent = await unpack('style', 'text/css').text();
  document.head.append(style);
  program.textContent = await unpack('program', 'text/javascript').text();
  document.body.append(program);
}

boot().catch((/** @type {unknown} */ error) => {
  const line = document.createElement('p');
  line.textContent = `This page needs a browser with DecompressionStream, which all have had since 2023 (${error}).`;
  byId('view', HTMLElement).append(line);
});
