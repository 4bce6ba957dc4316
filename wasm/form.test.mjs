// What the ask "form" answers, drawn by a general form generator (rjsf, a
// development tool in site/) as a host would: node --test wasm/form.test.mjs

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const require = createRequire(join(here, '..', 'site', 'package.json'));
const { createElement } = require('react');
const { renderToStaticMarkup } = require('react-dom/server');
const { default: Form } = require('@rjsf/core');
const { default: validator } = require('@rjsf/validator-ajv8');

/** @param {object[]} requests */
function ask(requests) {
  const said = execFileSync('go', ['run', '../cmd/marinecalc', 'lines'], {
    cwd: here, encoding: 'utf8', maxBuffer: 1 << 28,
    input: requests.map((one) => JSON.stringify(one)).join('\n') + '\n',
  });
  return said.trim().split('\n').map((line) => JSON.parse(line));
}

const [contents] = ask([{ ask: 'contents' }]);
const ids = contents.calculations.map((/** @type {{ id: string }} */ one) => one.id);
const forms = new Map(ask(ids.map((/** @type {string} */ calculation) => ({ ask: 'form', calculation })))
  .map((reply, i) => [ids[i], reply.form]));

/** @param {object} schema @param {object} [formData] */
const drawn = (schema, formData) => renderToStaticMarkup(createElement(Form, { schema, validator, formData }));

test('every input of every calculation is drawn', () => {
  for (const [id, schema] of forms) {
    const html = drawn(schema);
    assert.doesNotMatch(html, /Unsupported field|Unknown field type/i, id);
    for (const [name, property] of Object.entries(schema.properties)) {
      assert.match(html, new RegExp(`id="root_${name}(__title)?"`), `${id}/${name}`);
      assert.ok(html.includes(property.title.replaceAll('&', '&amp;').replaceAll("'", '&#x27;')), `${id}/${name}: ${property.title}`);
    }
  }
});

test('what can be picked is a list with titles, what is a quantity names its units, what is needed is marked', () => {
  const html = drawn(forms.get('bolt-preload'));
  const select = html.match(/<select id="root_grade".*?<\/select>/s)?.[0] ?? '';
  const choices = ask([{ ask: 'blank', calculation: 'bolt-preload' }])[0].choices['bolt-grades'];
  assert.ok(choices.length > 5);
  for (const { name } of choices) assert.ok(select.includes(`>${name.replaceAll('&', '&amp;').replaceAll("'", '&#x27;')}</option>`), name);
  assert.match(html, /With its unit: .*N·m.*lbf·ft/);
  assert.match(drawn(forms.get('gland-drip')), /<input[^>]*id="root_dripRate"[^>]*required/);
});

test('what was filled in passes the generator and is calculated, a slip does not pass', () => {
  const schema = forms.get('bolt-preload');
  const formData = { thread: 'M10x1.5', grade: 'iso-8.8', finish: 'oiled', nut: 'plain-nut' };
  assert.deepEqual(validator.validateFormData(formData, schema).errors, []);
  assert.ok(validator.validateFormData({ ...formData, grade: 'iso-8.9' }, schema).errors.length > 0);
  assert.ok(validator.validateFormData({ ...formData, tread: 'M10' }, schema).errors.length > 0);
  const [reply] = ask([{ ask: 'run', calculation: 'bolt-preload', input: formData, brief: true }]);
  assert.ok(reply.ok);
});
