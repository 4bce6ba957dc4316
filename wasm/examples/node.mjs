// A whole host in Node: node wasm/examples/node.mjs, after
// go run ./cmd/page -package wasm. With the npm package: import from 'marinecalc'.

import { load } from '../load.js';

const calculator = await load();
const reply = calculator.call({
  ask: 'run', calculation: 'bolt-preload', brief: true,
  input: { thread: 'M10x1.5', grade: 'iso-8.8', finish: 'oiled', nut: 'plain-nut' },
});
if (!reply.ok) {
  for (const problem of reply.problems) console.error(problem.where, problem.what, problem.allowed, problem.hint);
  process.exit(2);
}
for (const result of reply.sheet.results) console.log(result.name, result.text, result.si ?? '');
