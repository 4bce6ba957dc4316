// A program that is only checked: the types of requests and replies serve it
// without the browser's library of types.

import { load } from 'marinecalc';

export async function wrenchSetting(thread: string): Promise<number | undefined> {
  const calculator = await load();
  const reply = calculator.call({ ask: 'run', calculation: 'bolt-preload', input: { thread } });
  if (!reply.ok) {
    throw new Error(reply.problems.map((one) => `${one.where}: ${one.what}`).join('\n'));
  }
  const over = reply.sheet.verdicts.some((one) => one.word === 'beyond');
  const found = reply.sheet.results.find((one) => one.name === 'wrenchSetting');
  return over ? undefined : found?.si;
}
