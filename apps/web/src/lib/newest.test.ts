import { expect, test } from 'vitest';
import { Newest } from './newest.ts';

function worker() {
  const asked: string[] = [];
  const port = { postMessage: (question: string) => { asked.push(question); }, terminate: () => undefined, onmessage: null as ((event: MessageEvent) => void) | null };
  return { asked, port: port as unknown as Pick<Worker, 'postMessage' | 'terminate' | 'onmessage'>, answer: (data: string) => port.onmessage?.({ data } as MessageEvent) };
}

test('while the worker is busy only the newest question waits', () => {
  const { asked, port, answer } = worker();
  const told: string[] = [];
  const newest = new Newest<string, string>(port, (text) => told.push(text));
  for (const question of ['a', 'b', 'c']) newest.ask(question);
  expect(asked).toEqual(['a']);
  answer('A');
  expect(asked).toEqual(['a', 'c']);
  answer('C');
  expect(told).toEqual(['A', 'C']);
  newest.ask('d');
  expect(asked).toEqual(['a', 'c', 'd']);
});

test('what comes after an answer is asked when nothing waits', () => {
  const { asked, port, answer } = worker();
  const newest = new Newest<string, string>(port, () => undefined, (text) => (text.endsWith('!') ? null : `${text}!`));
  newest.ask('quick');
  answer('quick');
  answer('quick!');
  expect(asked).toEqual(['quick', 'quick!']);
});
