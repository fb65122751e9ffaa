import { readFileSync } from 'node:fs';
import { diversionChoice, type DesignDocument, type OptionPoint } from '@yardfall/calc';
import { DesignDocumentSchema } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { documentOfPoint, picksOf, threeMarks, type OptionsOutcome } from './front.ts';

const document = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const pump = document.system.parts.find((part) => part.kind === 'pump');
const roof = diversionChoice(document, 'G1');
if (pump?.kind !== 'pump' || roof === null) throw new Error('the site has a pump and a gutter');
const point = (cost: number, lower: number, passes = true, picks: OptionPoint['picks'] = {}): OptionPoint => ({ picks, cost, lower, protectedStorm: 25, wholeTable: false, passes, whyNotCheaper: null });

describe('three marks on the line', () => {
  it('are the cheapest that passes, the best gain for its price, and the most protection', () => {
    expect(threeMarks([point(1, -0.1, false), point(2, 0.02), point(3, 0.03), point(4, 0.06), point(9, 0.07)])).toEqual([1, 3, 4]);
  });

  it('are fewer where the line is short, and none where nothing passes', () => {
    expect(threeMarks([point(1, 0.02)])).toEqual([0]);
    expect(threeMarks([point(1, 0.02), point(2, 0.05)])).toEqual([0, 1]);
    expect(threeMarks([point(1, -0.02, false)])).toEqual([]);
    expect(threeMarks([])).toEqual([]);
  });
});

describe('a point opened as a variant', () => {
  const choices = [roof, { id: 'M1:pump', kind: 'pump' as const, alternatives: [{ id: 'drawn', name: pump.name, set: [] }, { id: 'e1', name: 'Other', set: [{ part: pump.id, fields: { curveName: 'Other', solids: 0.02 } }] }] }];
  const outcome: OptionsOutcome = { front: { points: [], combinations: 4, complete: true }, choices, cost: { kind: 'order', index: { base: 0, alternatives: { G1: { no: 0, yes: 1 }, 'M1:pump': { drawn: 0, e1: 1 } } }, unpriced: [] } };
  const asked = { document, asked: { entries: [{ choice: 'M1:pump', alternative: 'e1', part: pump.id, entry: 'e1', sha256: 'a'.repeat(64) }] } };
  const made = (picks: OptionPoint['picks']) => documentOfPoint(asked, outcome, point(1, 0.02, true, picks), new Date('2026-03-02T14:00:00Z'));

  it('holds what it picks, with its source, and is a document that the office takes', () => {
    const other = made({ G1: 'no', 'M1:pump': 'e1' });
    expect(other.system.parts.find(({ id }) => id === pump.id)).toMatchObject({ curveName: 'Other', solids: 0.02 });
    expect(other.site.catchments.some(({ drainsTo }) => drainsTo.kind === 'part' && drainsTo.id === 'G1')).toBe(false);
    expect(other.sources.library).toEqual([{ id: 'e1', sha256: 'a'.repeat(64), takenAt: '2026-03-02T14:00:00.000Z', part: pump.id }]);
    expect(DesignDocumentSchema.safeParse(other).success).toBe(true);
  });

  it('is the design as drawn where nothing else is picked', () => {
    expect(made({ G1: 'yes', 'M1:pump': 'drawn' })).toEqual(document);
    expect(picksOf(choices, point(1, 0, true, { G1: 'yes', 'M1:pump': 'drawn' })).map(({ isDrawn }) => isDrawn)).toEqual([false, true]);
  });
});
