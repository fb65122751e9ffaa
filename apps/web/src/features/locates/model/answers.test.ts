import { expect, test } from 'vitest';
import { latestAnswers, namesIn, type Response } from './answers.ts';

const said = (utility: string, answer: Response['answer'], id: string): Response => ({ id, utility, answer, note: '', at: '2026-11-25T15:00:00Z', by: 'Ana' });

test('the latest answer of each utility stands in the order of the ticket', () => {
  const responses = [said('Power', 'none', '1'), said('Gas', 'none', '2'), said('Power', 'needsMoreTime', '3'), said('Power', 'marked', '4')];
  expect(latestAnswers({ responses }).map(({ utility, answer }) => `${utility} ${answer}`)).toEqual(['Power marked', 'Gas none']);
});

test('names are read one a line or with commas, each once', () => expect(namesIn(' Fiber, Alarm\nFiber ;\n')).toEqual(['Fiber', 'Alarm']));
