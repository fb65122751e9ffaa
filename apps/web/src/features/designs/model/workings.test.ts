import { readdirSync, readFileSync } from 'node:fs';
import { evaluate, type DesignDocument } from '@yardfall/calc';
import { isMessageCode } from '@yardfall/text';
import { expect, test } from 'vitest';
import { textFor } from '../../../lib/reader.tsx';
import { placeWords } from './editWords.ts';
import { partLines } from './partLines.ts';
import { originOf, workingOf } from './workings.ts';

const folder = new URL('../../../../../../prisma/seed/sites/', import.meta.url);
const sites = readdirSync(folder).filter((file) => file.endsWith('.json')).map((file) => JSON.parse(readFileSync(new URL(file, folder), 'utf8')) as DesignDocument);
const evaluated = sites.map((document) => ({ document, evaluation: evaluate(document) }));

test('whatever a working rests on is said in words, never by a key of the document', () => {
  const unsaid = evaluated.flatMap(({ document, evaluation: { workings } }) => workings.flatMap(({ code, symbols }) => symbols.flatMap(({ from, meaning }) => {
    const origin = originOf(from, document, workings);
    if (!isMessageCode(`workings.meaning.${meaning}`)) return [meaning];
    if (origin.kind === 'result') return isMessageCode(`workings.${origin.code}`) ? [] : [origin.code];
    if (origin.kind !== 'design') return [];
    const isKey = (word: string): boolean => word === '' || (/^[a-z]\w*$/.test(word) && origin.path.includes(word));
    return placeWords([document], origin.path, textFor('en', 'us')).split(/, |: /).filter(isKey).map((word) => `${word} of ${code}`);
  })));
  expect([...new Set(unsaid)]).toEqual([]);
});

test('every number that stands at a part has a working, which comes to it', () => {
  for (const { document, evaluation: { results, workings } } of evaluated) {
    for (const line of partLines(results, document.rain.designReturnPeriod)) expect(workingOf(workings, line.result)?.value, line.result).toBe(line.value);
  }
});
