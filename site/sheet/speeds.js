// A rev counter: the speeds in use, the bands that excite the whirl, and a
// needle that a finger moves.

import { h, s } from '../kit/dom.js';
import { cells } from './cells.js';

/** @typedef {import('../../wasm/marinecalc.js').Table} Table */
/** @typedef {{ title: string, from: number, to: number }} Band */

const RPM = 30 / Math.PI;

/**
 * The bands that a speed lies in.
 * @param {Band[]} bands
 * @param {number} speed
 */
export function bandsAt(bands, speed) {
  return bands.filter((b) => speed >= b.from && speed <= b.to);
}

/**
 * @param {Table} table
 * @param {import('../../wasm/marinecalc.js').Sheet} sheet
 */
export function revCounter(table, sheet) {
  const cell = cells(table);
  const bands = table.rows.flatMap((row) => {
    const [free, held] = [cell(row, 'from'), cell(row, 'to')];
    if (free?.si === undefined || held?.si === undefined) return [];
    // As far as their ranges reach: between the two estimates alone it would be narrower than what is known.
    const [from, to] = [(free.low ?? free.si) * RPM, (held.high ?? held.si) * RPM];
    return [{ title: row.cells[0]?.text ?? '', from, to, text: `${Math.floor(from / 10) * 10} to ${Math.ceil(to / 10) * 10} rpm` }];
  });
  const full = (sheet.inputs.find((i) => i.name === 'shaftSpeed')?.si ?? 0) * RPM;
  const idle = (sheet.results.find((r) => r.name === 'shaftSpeedIdle')?.si ?? 0) * RPM;
  const most = Math.ceil((1.06 * Math.max(full, ...bands.map((b) => b.to))) / 100) * 100 || 100;
  const point = (/** @type {number} */ rpm, /** @type {number} */ r) => {
    const a = Math.PI * (rpm / most - 0.5);
    return `${(r * Math.sin(a)).toFixed(1)} ${(-r * Math.cos(a)).toFixed(1)}`;
  };
  const arc = (/** @type {number} */ from, /** @type {number} */ to, /** @type {number} */ r) => `M${point(from, r)}A${r} ${r} 0 0 1 ${point(to, r)}`;
  const needle = s('path', { class: 'needle' });
  const said = h('p', { class: 'then', role: 'status' });
  const slide = h('input', { type: 'range', min: 0, max: most, step: 10, value: Math.round(full), 'aria-label': 'Shaft speed, rpm' });
  const show = () => {
    const rpm = Number(slide.value);
    const here = bandsAt(bands, rpm);
    needle.setAttribute('d', `M0 0L${point(rpm, 128)}`);
    const use = rpm > full ? 'over full speed' : rpm < idle ? 'below idle' : 'in use';
    said.textContent = `${rpm} rpm, ${use}: ${here.length === 0 ? 'clear of the bands.' : `whirl excited ${here.map((b) => b.title).join(', ')}.`}`;
    slide.setAttribute('aria-valuetext', said.textContent);
  };
  slide.addEventListener('input', show);
  const step = 10 ** Math.floor(Math.log10(most / 3));
  const ticks = Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
  const made = h(
    'section',
    { class: 'revs' },
    h('h3', {}, 'Speeds and bands'),
    s(
      'svg',
      { viewBox: '-165 -160 330 172', role: 'img', 'aria-label': `Shaft speeds: ${idle > 0 ? `idle ${Math.round(idle)}, ` : ''}full ${Math.round(full)} rpm. ${bands.map((b) => `Excited ${b.title}: ${b.text}.`).join(' ')}` },
      s('path', { class: 'scale', d: arc(0, most, 140) }),
      s('path', { class: 'use', d: arc(Math.min(idle, full), full, 132) }),
      ...bands.map((b, i) => s('path', { class: i === 0 ? 'whirl' : 'blades', d: arc(b.from, b.to, 118 - 18 * i) })),
      ...ticks.map((t) => letter(point(t, 152), String(t / 100))),
      needle,
      s('circle', { class: 'pin', r: 5 }),
      ...bands.map((b, i) => letter(point((b.from + b.to) / 2, 118 - 18 * i), String.fromCharCode(65 + i))),
    ),
    h('ol', { class: 'bands' }, ...bands.map((b) => h('li', {}, `${b.title}: ${b.text}`))),
    slide,
    said,
    h('p', { class: 'help' }, 'Hundreds of rpm of the shaft; the thick arc is idle to full. A is the whirl itself. Pass a band, do not stay in it.'),
  );
  show();
  return made;
}

/**
 * @param {string} at
 * @param {string} text
 */
function letter(at, text) {
  const [x = '', y = ''] = at.split(' ');
  return s('text', { x, y, 'text-anchor': 'middle', 'dominant-baseline': 'central' }, text);
}
