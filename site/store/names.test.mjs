// Names of files: node --test site/

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { forFile } from './names.js';

// The names of devices: Microsoft Learn, "Naming Files, Paths, and Namespaces".
test('a name that every file system takes', () => {
  for (const [name, file] of [
    ['Kittiwake', 'kittiwake'], ['Mary & Anne', 'mary-anne'], ['Möwe 2', 'möwe-2'],
    ['CON', 'boat-con'], ['nul', 'boat-nul'], ['Aux.', 'boat-aux'], ['prn ', 'boat-prn'], ['COM1', 'boat-com1'], ['lpt9', 'boat-lpt9'], ['com¹', 'boat-com¹'], ['Conny', 'conny'],
    ['..', 'boat'], ['///', 'boat'], ['', 'boat'], ['Tern...', 'tern'], ['a'.repeat(200), 'a'.repeat(60)], ['𝒜'.repeat(200), '𝒜'.repeat(60)],
  ]) assert.equal(forFile(/** @type {string} */ (name)), file);
});
