import { readFileSync } from 'node:fs';
import { evaluate, type BandResult, type DesignDocument, type RankedSwing } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { textFor } from '../../../lib/reader.tsx';
import { rankedName, swingsShown } from './ranking.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const swing = (input: RankedSwing['input'], at: string | null, size: number, decides: RankedSwing['decides'] = null): RankedSwing => ({ input, at, low: 0.02, high: 0.02 + size, swing: size, decides });
const band = (...ranking: readonly RankedSwing[]): BandResult => ({ returnPeriod: 25, samples: 200, middle: 0.02, ranking });

test('what decides stands first even when it moves little; what moves nothing is told apart', () => {
  const given = band(swing('rimShot', 'L1', 0.0001, 'gravity'), swing('rain', null, 0.05), swing('invertShot', null, 0));
  const shown = swingsShown(given);
  expect(shown.deciding.map(({ input, decides }) => [input, decides])).toEqual([['rimShot', 'gravity']]);
  expect(shown.rows.map(({ index }) => index)).toEqual([0, 1]);
  expect(shown.still.map(({ input }) => input)).toEqual(['invertShot']);
});

test('every row keeps its place in the ranking, where its working stands', () => {
  const { band: made, } = evaluate(document).results;
  if (made === null) throw new Error('the site has a band');
  for (const { swing: shown, index } of swingsShown(made).rows) expect(made.ranking[index]).toBe(shown);
});

test('an input is named by its surface or by its thing, in both languages', () => {
  const english = textFor('en', 'us');
  expect(rankedName(swing('coefficient', 'lawn', 1), document, english)).toBe('Runoff of Lawn');
  expect(rankedName(swing('sillShot', 'S1', 1), document, english)).toContain(document.site.sills[0]?.name ?? 'no sill');
  expect(rankedName(swing('rain', null, 1), document, textFor('es', 'us'))).toBe('Lluvia');
});
