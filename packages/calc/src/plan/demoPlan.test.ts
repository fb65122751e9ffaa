import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { DesignDocument } from '../document/document.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import { documentLowSpots } from '../surface/documentLowSpots.ts';
import { findLowSpots } from '../surface/lowSpots.ts';
import { triangulateSurvey } from '../surface/survey.ts';
import { planChecks } from './planChecks.ts';
import { planGround } from './planGround.ts';
import { planFigures } from './takeOff.ts';

const site = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const quick = { band: false, workings: false } as const;

describe('the plan of the demo yard', () => {
  it('measures what the document says, each area and length within 1 %', () => {
    const figures = planFigures(site);
    expect(figures.map(({ of }) => of).sort()).toEqual(['C1', 'C2', 'C3', 'C4', 'CH1', 'G1', 'G2', 'N1', 'P1', 'R1', 'lot']);
    for (const { of, drawn, stated } of figures) expect(Math.abs(drawn / stated - 1), of).toBeLessThan(0.01);
  });

  it('shows where the discharge line meets the marked lines, and nothing that cannot be', () => {
    expect(planChecks(site).map(({ code, shapes }) => `${code} ${shapes.join(' ')}`)).toEqual(['plan.crossesUtility PB5 PB7', 'plan.crossesUtility PB5 PB8', 'plan.crossesUtility PB5 PB9']);
  });

  it('makes a ground whose low spot lies on the patio, as low as the document says', () => {
    const ground = triangulateSurvey(planGround(site.site));
    const drainage = findLowSpots(ground);
    const [deepest] = documentLowSpots(ground, drainage).map(({ index }) => drainage.lowSpots[index]!).sort((a, b) => b.volume - a.volume);
    expect(deepest?.bottom.level).toBe(site.site.lowSpots[0]?.stageArea[0]?.level);
    // The patio holds water up to the rim that was shot, to a tenth of a foot.
    expect(Math.abs(deepest!.topLevel - site.site.lowSpots[0]!.rimLevel)).toBeLessThan(0.03);
  });

  it('is geometry: without it every result is the same', () => {
    const bare = { ...site, site: { ...site.site, plan: null, spotLevels: site.site.spotLevels.slice(0, 10).map((spot) => ({ ...spot, position: null })) } };
    expect(evaluate(bare, quick)).toEqual(evaluate(site, quick));
  });
});
