// A host's program, which TypeScript checks without the types of any host.

import * as types from './marinecalc.js';

/** A host's own form of a boat: an interface, which has no index signature. */
interface MyBoat {
  name: string;
  readings?: { date: string; dripRate?: string }[];
}

export async function ask(bytes: Uint8Array, mine: MyBoat): Promise<string[]> {
  const calculator: types.Calculator = await types.start(bytes);
  await types.start(bytes.buffer as ArrayBuffer);
  const lines: string[] = [];

  const contents = calculator.call({ ask: 'contents' });
  if (!contents.ok) return contents.problems.map((p) => `${p.where}: ${p.what} ${p.hint ?? ''}`);
  const { version, groups, units } = contents;
  lines.push(version, ...groups.flatMap((g) => g.calculations), ...(units.length ?? []));

  const survey = calculator.call({ ask: 'survey', boat: mine, units: 'both', brief: true });
  if (!survey.ok) return [];
  for (const { verdict, sheet } of survey.survey.findings) {
    const red: number | undefined = verdict.boundSI;
    const over: boolean = verdict.side === 'at most' && verdict.si !== undefined && red !== undefined && verdict.si > red;
    const settle: string = verdict.settle ?? 'nothing';
    lines.push(`${sheet}: ${verdict.word} ${over} ${settle}`);
  }
  for (const sheet of survey.survey.sheets) {
    lines.push(...(sheet.notes ?? []), sheet.made.version, sheet.made.units, ...sheet.results.map((r) => `${r.text} ${r.interval ?? ''}`));
    for (const input of sheet.inputs) lines.push(`${input.title}: ${input.word ?? input.text} (${input.origin})`);
  }

  const run = calculator.call({ ask: 'run', calculation: 'bolt-preload', input: mine, seed: 1 });
  if (run.ok) lines.push(run.sheet.title);
  const csv = calculator.call({ ask: 'csv', calculation: 'work-plan', table: 'shopping' });
  if (csv.ok) lines.push(csv.csv);
  const moved = calculator.call({ ask: 'compare', boat: mine, before: '2025-10-04', after: '2026-06-20' });
  if (moved.ok) lines.push(...moved.comparison.moved.map((m) => `${m.result} ${m.change}`), ...moved.comparison.turned.map((v) => v.calculation));
  const blank = calculator.call({ ask: 'blank', calculation: 'fault-finding' });
  if (blank.ok) lines.push(...Object.keys(blank.schema.$defs.input.properties ?? {}), ...(blank.questions ?? []).map((q) => q.group));
  const typed = calculator.call({ ask: 'quantity', quantity: 'length', text: '5', unit: 'mm' });
  if (typed.ok) lines.push(typed.text, typed.si.toFixed(3));
  const added = calculator.call({ ask: 'add-readings', boat: mine, csv: 'date,dripRate' });
  if (added.ok) lines.push(String(added.boat.name));
  return lines;
}
