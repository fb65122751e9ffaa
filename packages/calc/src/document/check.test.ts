import { describe, expect, test, vi } from 'vitest';
import { evaluate } from '../evaluate/evaluate.ts';
import { changed, demoSite, withPart, type Changeable } from '../testing/sites.ts';
import { checkDocument } from './check.ts';
import type { DesignDocument } from './document.ts';
import { DocumentError } from './error.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const site = demoSite('tern-hollow');

function problemOf(document: DesignDocument): { readonly code: string; readonly path: string } {
  try {
    checkDocument(document);
  } catch (error) {
    if (error instanceof DocumentError) return { code: error.code, path: error.path };
    throw error;
  }
  throw new Error('the document passed');
}

type Change = (copy: Changeable<DesignDocument>) => void;
const part = (copy: Changeable<DesignDocument>, id: string): Record<string, unknown> =>
  copy.system.parts.find((item) => item.id === id) as unknown as Record<string, unknown>;

const bad: readonly [name: string, change: Change, code: string, path: string][] = [
  ['a newer version', (copy) => { Object.assign(copy, { version: 3 }); }, 'document.version', '/version'],
  ['a NaN', (copy) => { copy.site.catchments[0]!.area = NaN; }, 'document.notFinite', '/site/catchments/0/area'],
  ['an infinite level', (copy) => { copy.site.sills[0]!.level = Infinity; }, 'document.notFinite', '/site/sills/0/level'],
  ['a negative area', (copy) => { copy.site.catchments[1]!.area = -1; }, 'document.negative', '/site/catchments/1/area'],
  ['a loss that no yard has', (copy) => { copy.site.lowSpots[0]!.existingLoss = 101; }, 'document.outOfRange', '/site/lowSpots/0/existingLoss'],
  ['a loss that brings water', (copy) => { copy.site.lowSpots[0]!.existingLoss = -1e-6; }, 'document.negative', '/site/lowSpots/0/existingLoss'],
  ['a missing field', (copy) => { Reflect.deleteProperty(copy.site.catchments[0]!, 'slope'); }, 'document.missing', '/site/catchments/0/slope'],
  ['a word for a number', (copy) => { Object.assign(copy.site.catchments[0]!, { area: 'big' }); }, 'document.wrongType', '/site/catchments/0/area'],
  ['a coefficient above one', (copy) => { copy.site.catchments[0]!.coefficient = 1.2; }, 'document.outOfRange', '/site/catchments/0/coefficient'],
  ['a loop', (copy) => { part(copy, 'P1')['drainsTo'] = 'P1'; }, 'document.loop', '/system/parts/5/drainsTo'],
  ['a pipe to nowhere', (copy) => { part(copy, 'P1')['drainsTo'] = null; }, 'document.noOutlet', '/system/parts/6/drainsTo'],
  ['a pipe to a part that is not there', (copy) => { part(copy, 'P1')['drainsTo'] = 'Z9'; }, 'document.unknownId', '/system/parts/6/drainsTo'],
  ['a pipe into a pump', (copy) => { part(copy, 'P1')['drainsTo'] = 'M1'; }, 'document.wrongKind', '/system/parts/6/drainsTo'],
  ['a catchment to a part that is not there', (copy) => { copy.site.catchments[0]!.drainsTo = { kind: 'part', id: 'Z9' }; }, 'document.unknownId', '/site/catchments/0/drainsTo/id'],
  ['two parts of one id', (copy) => { part(copy, 'D2')['id'] = 'D1'; }, 'document.duplicateId', '/system/parts/3/id'],
  ['a pump curve that rises', (copy) => { (part(copy, 'M1')['curve'] as { head: number }[])[2]!.head = 9; }, 'document.notFalling', '/system/parts/8/curve/2/head'],
  ['a pump curve of one point', (copy) => { (part(copy, 'M1')['curve'] as unknown[]).splice(1); }, 'document.tooFew', '/system/parts/8/curve'],
  ['stage areas that shrink', (copy) => { copy.site.lowSpots[0]!.stageArea[2]!.area = 1; }, 'document.notRising', '/site/lowSpots/0/stageArea/2/area'],
  ['two stages at one level', (copy) => { copy.site.lowSpots[0]!.stageArea[1]!.level = copy.site.lowSpots[0]!.stageArea[0]!.level; }, 'document.notRising', '/site/lowSpots/0/stageArea/1/level'],
  ['an off level above the on level', (copy) => { part(copy, 'B1')['offLevel'] = 29.8; }, 'document.levelOrder', '/system/parts/7/onLevel'],
  ['a rain table with a short row', (copy) => { copy.rain.table.depths[3]!.pop(); }, 'document.tableShape', '/rain/table/depths/3'],
  ['rain that falls with the return period', (copy) => { copy.rain.table.depths[3]![1] = 1; }, 'document.notRising', '/rain/table/depths/3/1'],
  ['a storm longer than the table', (copy) => { copy.rain.storm.duration = 864000; }, 'document.outOfRange', '/rain/storm/duration'],
  ['a design storm beyond the table', (copy) => { copy.rain.designReturnPeriod = 500; }, 'document.notInTable', '/rain/designReturnPeriod'],
  ['a sill at an unknown low spot', (copy) => { copy.site.sills[0]!.lowSpot = 'L9'; }, 'document.unknownId', '/site/sills/0/lowSpot'],
  ['a closure without its set-ups', (copy) => { Object.assign(copy.site, { closure: { misclosure: 0.001 } }); }, 'document.missing', '/site/closure/setUps'],
  ['a lot of no area', (copy) => { copy.site.lotArea = 0; }, 'document.notPositive', '/site/lotArea'],
  ['a landing of another kind', (copy) => { Object.assign(copy.site.sills[0]!, { landing: { kind: 'ramp', before: 0, after: 0 } }); }, 'document.wrongKind', '/site/sills/0/landing/kind'],
  ['a landing without a step after', (copy) => { Object.assign(copy.site.sills[0]!, { landing: { kind: 'egress', before: 0 } }); }, 'document.missing', '/site/sills/0/landing/after'],
  ['an outlet over sand', (copy) => { part(copy, 'O1')['exitGround'] = 'sand'; }, 'document.wrongKind', '/system/parts/12/exitGround'],
  ['a cable laid in air', (copy) => { Object.assign(copy.construction.electrical!, { burial: { method: 'air', depth: 1 } }); }, 'document.wrongKind', '/construction/electrical/burial/method'],
  ['a cable above ground', (copy) => { Object.assign(copy.construction.electrical!, { burial: { method: 'direct', depth: -1 } }); }, 'document.negative', '/construction/electrical/burial/depth'],
  ['an unknown kind of part', (copy) => { part(copy, 'P1')['kind'] = 'hose'; }, 'document.wrongKind', '/system/parts/6/kind'],
];

describe('document check', () => {
  test.each(['tern-hollow', 'ridgeback', 'sallow-bend'] as const)('passes %s', (name) => {
    expect(() => { checkDocument(demoSite(name)); }).not.toThrow();
  });

  test.each(bad)('refuses %s', (_, change, code, path) => {
    expect(problemOf(changed(site, change))).toEqual({ code, path });
  });

  test('refuses a loop of several parts', () => {
    const looped = changed(demoSite('ridgeback'), (copy) => {
      copy.system.parts.push({ ...structuredClone(copy.system.parts.find(({ id }) => id === 'P1')!), id: 'P2', drainsTo: 'P1' } as never);
      part(copy, 'P1')['drainsTo'] = 'P2';
    });
    expect(problemOf(looped).code).toBe('document.loop');
  });

  test('takes flat and back-falling pipes: those are findings, with no NaN in the results', () => {
    const pipe = site.system.parts.find((item) => item.kind === 'pipe')!;
    for (const [invertDown, code] of [[pipe.invertUp, 'G1.flat'], [pipe.invertUp + 0.1, 'G1.backFall']] as const) {
      const evaluation = evaluate(withPart<'pipe'>(site, 'P1', { invertDown }), { band: false });
      expect(evaluation.findings.map((finding) => finding.code)).toContain(code);
    }
  });
});
