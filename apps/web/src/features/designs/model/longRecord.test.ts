import { readFileSync } from 'node:fs';
import { longRecord, parseSeries, type DesignDocument } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { countRows, notesApart } from './longRecord.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
/** Two years of our own: one burst in the first, none in the second, half of which is missing. */
const rows = Array.from({ length: 365 + 182 }, (_, day) => {
  const date = new Date(Date.UTC(2001, 0, 1 + day)).toISOString().slice(0, 10);
  return Array.from({ length: 24 }, (__, hour) => `${date} ${String(hour).padStart(2, '0')}:00,${day === 150 && hour === 14 ? 90 : 0}`).join('\n');
});
const result = longRecord(document, parseSeries(`time,depth (mm)\n${rows.join('\n')}`, { name: 'Ours' }, 60));

test('years in which nothing came are not listed; the others with their readings', () => {
  const listed = countRows(result);
  expect(listed.map(({ year }) => year)).toEqual([2001]);
  expect(listed[0]?.valid).toBe(1);
  expect(listed[0]?.withoutSystem).toBe('1');
});

test('the counts of the years come to the counts that are said', () => {
  const counted = countRows(result).reduce((sum, { withoutSystem }) => sum + Number(withoutSystem.split('–').at(-1)), 0);
  expect(counted).toBe(result.sills[0]?.withoutSystem?.high);
});

test('what is said of the sills stands before what the record is worth, and nothing is lost', () => {
  const { answers, about } = notesApart(result.notes);
  expect(answers.map(({ code }) => code)).toContain('record.withoutEstimate');
  expect(about.map(({ code }) => code)).toEqual(expect.arrayContaining(['record.span', 'record.noReturnPeriod', 'record.notThisYard']));
  // A file of our own has no station number: that line alone is left out.
  expect(result.notes.filter((note) => !answers.includes(note) && !about.includes(note)).map(({ code }) => code)).toEqual(['record.gauge']);
});
