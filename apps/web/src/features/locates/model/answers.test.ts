import { describe, expect, test } from 'vitest';
import { latestAnswers, type Response } from '../../../lib/tickets.ts';
import { drawnOf, namesIn, onTicket, sortUtilities, usualCode } from './answers.ts';

const said = (utility: string, answer: Response['answer'], id: string): Response => ({ id, utility, answer, code: '', note: '', photoId: null, at: '2026-11-25T15:00:00Z', by: 'Ana' });

test('the latest answer of each utility stands in the order of the ticket', () => {
  const responses = [said('Power', 'none', '1'), said('Gas', 'none', '2'), said('Power', 'needsMoreTime', '3'), said('Power', 'marked', '4')];
  expect(latestAnswers({ responses }).map(({ utility, answer }) => `${utility} ${answer}`)).toEqual(['Power marked', 'Gas none']);
});

test('names are read one a line or with commas, each once', () => expect(namesIn(' Fiber, Alarm\nFiber ;\n')).toEqual(['Fiber', 'Alarm']));

describe('what the design draws of a utility', () => {
  const drawn = [
    { id: 'U1', kind: 'gas', name: 'Gas service', station: 9, level: 29.9, tolerance: 0.6 }, { id: 'U2', kind: 'communication', name: 'Cable drop', station: 17, level: 30, tolerance: 0.6 },
  ] as const;
  test.each([['Gas', ['U1']], ['Piedmont natural gas', ['U1']], ['Teléfono', ['U2']], ['Cable', ['U2']], ['Sewer', []], ['Gaston county', []]])('%s', (utility, ids) => {
    expect(drawnOf(utility, drawn).map(({ id }) => id)).toEqual(ids);
  });
});

test('a usual utility is known in both languages, another name stands as it is', () => {
  expect([usualCode('Power'), usualCode('Electricidad'), usualCode('Piedmont')]).toEqual(['locates.usual.power', 'locates.usual.power', null]);
});

test('the utilities of a ticket that is renewed are told apart again', () => {
  const words = (name: string) => ({ power: 'Power', gas: 'Gas' })[name] ?? name;
  expect(sortUtilities(['Gas', 'Piedmont', 'Power'], words)).toEqual({ usual: ['power', 'gas'], others: ['Piedmont'] });
});
test('a utility that stands on the ticket is known in another case and in the other language', () => {
  const names = ['Electricidad', 'Piedmont'];
  expect(['Power', 'piedmont', 'Gas', 'Piedmont water'].map((name) => onTicket(names, name))).toEqual(['Electricidad', 'Piedmont', null, null]);
});
