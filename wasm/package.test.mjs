// The npm package, as a stranger gets it: packed, installed into an empty
// project without a network, run, and its types checked. node --test wasm/
// Builds the module itself, so it needs the Go toolchain.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'marinecalc-npm-'));
after(() => rmSync(folder, { recursive: true }));
const [made, project] = [join(folder, 'made'), join(folder, 'project')];
execFileSync('go', ['run', '../cmd/page', '-package', made], { cwd: here });
execFileSync('npm', ['pack', '--ignore-scripts', '--pack-destination', folder], { cwd: made });
const packed = join(folder, readdirSync(folder).find((name) => name.endsWith('.tgz')) ?? '');
cpSync(join(here, 'examples', 'types'), project, { recursive: true });
writeFileSync(join(project, 'package.json'), '{"name": "fresh", "private": true, "type": "module"}');
execFileSync('npm', ['install', '--offline', '--no-audit', '--no-fund', packed], { cwd: project });

test('a fresh project installs and runs it', () => {
  writeFileSync(join(project, 'main.mjs'), `
import { load } from 'marinecalc';
const reply = (await load()).call({ ask: 'run', calculation: 'shaft-torque', input: { enginePower: '21 kW', engineSpeed: '2800 rpm', gearRatioAhead: 2.15 } });
console.log(reply.ok, reply.ok || JSON.stringify(reply.problems));`);
  assert.match(String(execFileSync('node', ['main.mjs'], { cwd: project })), /^true true/);
});

test('the example host in Node answers from the package', () => {
  const text = readFileSync(join(here, 'examples', 'node.mjs'), 'utf8').replace("'../load.js'", "'marinecalc'");
  writeFileSync(join(project, 'node.mjs'), text);
  assert.match(String(execFileSync('node', ['node.mjs'], { cwd: project })), /^wrenchSetting .*N·m/m);
});

test('its types serve a program without the library of the browser', () => {
  const tsc = join(here, '..', 'site', 'node_modules', 'typescript', 'lib', 'tsc.js');
  const said = execFileSync('node', [tsc, '-p', project], { encoding: 'utf8' });
  assert.equal(said, '');
});
