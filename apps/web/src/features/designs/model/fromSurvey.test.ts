import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { applyOperations, DesignDocumentSchema, type SurveyContent } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { surveyStanding } from './fromSurvey.ts';

const drawn = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const bare: DesignDocument = { ...drawn, site: { ...drawn.site, plan: null, spotLevels: [], candidateOutlets: [], existingDrains: [], closure: null } };
const at = new Date('2026-03-02T14:00:00Z');
const reading = (n: number, point: string, sight: object) => ({ id: `01930000-0000-7000-8000-00000000000${String(n)}`, point, backsight: null, intermediate: null, foresight: null, direct: null, note: '', ...sight });

/** Three shots from one set-up; heights by hand: 30.48 + 1.5 - 1.522 = 30.458, 30.48 + 1.5 - 1.7 = 30.28. */
const content = (sill: number, pins?: SurveyContent['pins']): SurveyContent => ({
  levelBook: { mode: 'heightOfInstrument', benchMark: { name: drawn.site.datum.benchMark, level: drawn.site.datum.level }, readings: [reading(1, drawn.site.datum.benchMark, { backsight: 1.5 }), reading(2, 'Patio slider track', { intermediate: sill }), reading(3, 'Far corner', { intermediate: 1.7 })] },
  points: [{ point: 'Patio slider track', role: 'sill', station: 0, distance: null, tailwater: null }], stageArea: [], drainTests: [], observations: [], ...(pins === undefined ? {} : { pins }),
});
const survey = (of: SurveyContent, sha256 = 'a'.repeat(64)) => ({ id: '01930000-0000-7000-8000-000000000009', sha256, content: of });
const taken = (document: DesignDocument, of: SurveyContent): DesignDocument => applyOperations(document, surveyStanding(document, [survey(of)], at)?.operations ?? []);

test('pinned levels become spot levels with a place, the site gets a plan, and nothing else moves', () => {
  const after = taken(bare, content(1.522, [{ point: 'Far corner', x: 4, y: -2 }]));
  expect(after.site.spotLevels).toEqual([
    { id: 'V1', name: 'Patio slider track', level: expect.closeTo(30.458, 9), station: 0, position: null }, { id: 'V2', name: 'Far corner', level: expect.closeTo(30.28, 9), station: null, position: { x: 4, y: -2 } },
  ]);
  expect(after.site.plan).toEqual({ picture: null, north: null, shapes: [] });
  expect(after.sources.survey).toEqual({ id: survey(content(1)).id, sha256: 'a'.repeat(64), takenAt: at.toISOString() });
  expect(after.site.catchments).toEqual(bare.site.catchments);
  expect(DesignDocumentSchema.safeParse(after).success).toBe(true);
});

test('a survey that changed is offered by its differences: a level, a pin; the sill of the same name follows', () => {
  const before = taken(bare, content(1.522, [{ point: 'Far corner', x: 4, y: -2 }]));
  expect(surveyStanding(before, [survey(content(1.522, [{ point: 'Far corner', x: 4, y: -2 }]))], at)).toBeNull();
  const changed = surveyStanding(before, [survey(content(1.512, [{ point: 'Far corner', x: 5, y: -2 }]), 'b'.repeat(64))], at);
  expect(changed?.isNewer).toBe(true);
  expect(changed?.operations.map((one) => ('path' in one ? one.path.join('.') : ''))).toEqual(['site.sills.@S1.level', 'site.spotLevels.@V1.level', 'site.spotLevels.@V2.position', 'sources']);
  const after = applyOperations(before, changed?.operations ?? []);
  expect(after.site.sills[0]?.level).toBeCloseTo(30.468, 9);
});

test('a plan that is drawn stays, and so does a level that the survey does not know', () => {
  const plan = { picture: null, north: 12, shapes: [] };
  const known = { ...bare, site: { ...bare.site, plan, spotLevels: [{ id: 'X', name: 'Typed', level: 30, station: null, position: { x: 1, y: 1 } }] } };
  const after = taken(known, content(1.522, [{ point: 'Far corner', x: 4, y: -2 }]));
  expect(after.site.plan).toEqual(plan);
  expect(after.site.spotLevels.map(({ name }) => name)).toEqual(['Typed', 'Patio slider track', 'Far corner']);
});

test('a draft that holds what the survey says is offered nothing', () => {
  const after = taken(bare, content(1.522));
  expect(surveyStanding({ ...after, sources: { ...after.sources, survey: null } }, [survey(content(1.522))], at)).toBeNull();
  expect(surveyStanding(bare, [], at)).toBeNull();
});
