import { describe, expect, test, vi } from 'vitest';
import type { CatchBasin, DesignDocument, Pipe } from '../document/document.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

/** Tern Hollow with a second low spot (ours): a box in the side yard, its pipe joining the first one or the basin. */
function withSideYard(join: 'P1' | 'B1'): DesignDocument {
  return changed(demoSite('tern-hollow'), (copy) => {
    const level = copy.site.lowSpots[0]!.stageArea[0]!.level;
    copy.site.lowSpots.push({
      id: 'L2', name: 'Side yard', stageArea: [{ level, area: 2 }, { level: level + 0.1, area: 40 }], rimLevel: level + 0.1, spillWidth: 2, spillsTo: null, existingLoss: 0, station: 4,
    });
    copy.site.sills.push({ id: 'S2', name: 'Crawl vent', kind: 'vent', level: level + 0.09, lowSpot: 'L2', soilFall: null, landing: null });
    copy.site.catchments.push({ ...structuredClone(copy.site.catchments[0]!), id: 'C9', name: 'Side walk', area: 12, drainsTo: { kind: 'part', id: 'CB1' } });
    const pipe = structuredClone(copy.system.parts.find((part): part is Pipe => part.kind === 'pipe')!);
    const box: CatchBasin = {
      kind: 'catchBasin', id: 'CB1', name: 'Side box', drainsTo: 'P2', lowSpot: 'L2', grateLevel: level - 0.002, gratePerimeter: 1.2, grateOpenArea: 0.04,
      clogging: 0.5, invertOut: pipe.invertUp + 0.1, sumpDepth: 0.15,
    };
    copy.system.parts.push(box, { ...pipe, id: 'P2', name: 'Side pipe', invertUp: pipe.invertUp + 0.1, invertDown: pipe.invertUp + 0.01, length: 6, drainsTo: join });
  });
}

describe('several low spots on one basin', () => {
  test.each(['P1', 'B1'] as const)('are routed together and lose no water, joined at %s', (join) => {
    const evaluation = evaluate(withSideYard(join));
    expect(evaluation.massError).toBeLessThan(1e-6);
    expect(evaluation.results.freeboards.map(({ sill, returnPeriod }) => `${sill} ${returnPeriod}`)).toEqual([
      'S1 2', 'S2 2', 'S1 10', 'S2 10', 'S1 25', 'S2 25', 'S1 100', 'S2 100',
    ]);
    const side = evaluation.results.freeboards.filter(({ sill }) => sill === 'S2');
    for (const item of side) expect(item.onTwin).toBeGreaterThan(item.withoutSystem);
  });

  test('the pipe they share carries both flows', () => {
    const alone = evaluate(demoSite('tern-hollow'), { band: false }).results.pipes[0]!.designFlow;
    const { pipes } = evaluate(withSideYard('P1'), { band: false }).results;
    expect(pipes[0]!.designFlow).toBeCloseTo(alone + pipes[1]!.designFlow, 12);
    expect(pipes[1]!.designFlow).toBeGreaterThan(0);
  });

  test('water that the second one brings never raises the freeboard of the first', () => {
    const first = (document: DesignDocument) => evaluate(document, { band: false }).results.freeboards.filter(({ sill }) => sill === 'S1').map(({ onTwin }) => onTwin);
    const alone = first(demoSite('tern-hollow'));
    first(withSideYard('B1')).forEach((freeboard, index) => { expect(freeboard).toBeLessThanOrEqual(alone[index]! + 2e-6); });
  });
});
