import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DesignDocumentSchema } from '../document/schema.ts';
import { buildChecklist } from './build.ts';
import { foldItem } from './fold.ts';
import { holdPointsNow } from './holdPoints.ts';
import { lawn, site } from './sites.test-d.ts';

const tern = await buildChecklist(site('tern-hollow'));
const keys = tern.map(({ key }) => key);

describe('equal parts', () => {
  const measured = (items: typeof tern, key: string) => items.find((item) => item.key === key)?.requirement;
  test('of a trench are one step, each measured by its name and seen by itself', () => {
    // Tern Hollow: the pipe, the roof line and the discharge line.
    expect(measured(tern, 'C4')).toMatchObject({ part: null, minPhotos: 3, params: { 'at:P1': expect.any(String), 'at:R1': expect.any(String), 'at:N1': expect.any(String) } });
    expect(measured(tern, 'C4')?.measures.map(({ name }) => name)).toEqual(['trenchLine:R1', 'trenchLine:P1', 'trenchLine:N1']);
    expect(measured(tern, 'E2')?.measures).toHaveLength(3);
    expect(keys.filter((key) => /^(C4|E2|E3):/.test(key))).toEqual([]);
  });
  test('that there is one of keeps the step of its part', async () => {
    const items = await buildChecklist(site('ridgeback'));
    expect(measured(items, 'C4:P1')?.measures.map(({ name }) => name)).toEqual(['trenchLine']);
  });
  test('are not put together where a hold point stands for each: fall, test and cover of each pipe', async () => {
    const lines = (await buildChecklist(lindqvist())).filter(({ template }) => ['E1', 'E5', 'E6'].includes(template));
    expect(lines).toHaveLength(12);
  });
  test('the roof line and the underdrain have trench, bedding and cover, the fittings of each are counted', () => {
    expect(keys).toEqual(expect.arrayContaining(['E5:R1', 'E6:R1']));
    expect(holdPointsNow(tern.map(({ key, template, part }) => ({ key, template, part, state: 'open' as const, freshUntil: null })), { at: 0, mayDig: true }).find(({ id, part }) => id === 'HP-7' && part === 'R1')?.guards).toEqual(['E6:R1']);
    const bends = site('tern-hollow').system.parts.flatMap((part) => (part.kind === 'pipe' || part.kind === 'roofLine' ? [Math.max(part.bends90 + part.bends45, 1)] : []));
    expect(measured(tern, 'E3')?.minPhotos).toBe(bends.reduce((sum, n) => sum + n, 0));
  });
  test('keep the list short: steps of each demo job', async () => {
    expect((await buildChecklist(lawn())).length).toBeLessThanOrEqual(30);
    expect((await buildChecklist(lindqvist())).length).toBeLessThanOrEqual(40);
    expect(tern.length).toBeLessThanOrEqual(60);
  });
});

describe('what is measured and seen', () => {
  const asked = (items: typeof tern, key: string) => items.find((item) => item.key === key)?.requirement;
  const named = (key: string) => asked(tern, key)?.measures.map(({ name }) => name);
  test('a test hole every ten feet of the cut, two at least, each with its photo, and the steel by name', async () => {
    // 18.5 ft at Tern Hollow, 40.5 ft at Kestrel Pool.
    expect(asked(tern, 'B5:X1')).toMatchObject({ minPhotos: 2, texts: ['steel'], params: { holes: 2 } });
    const kestrel = asked(await buildChecklist(anySite('kestrel-pool')), 'B5:X1');
    expect(kestrel).toMatchObject({ minPhotos: 5 });
    expect(kestrel?.measures.map(({ name, max }) => [name, max])).toEqual(['1', '2', '3', '4', '5'].map((n) => [`thickness:${n}`, 0.127]));
  });
  test('an electrician signs at a pool, also where there is no pump', async () => {
    expect(asked(await buildChecklist(anySite('kestrel-pool')), 'B8')).toMatchObject({ evidence: ['tick', 'photo', 'signature'], signers: ['crewLead', 'electrician'] });
    expect(asked(tern, 'B8')).toMatchObject({ evidence: ['tick', 'photo'], signers: ['crewLead'] });
  });
  test('each figure of the row', () => {
    const rows: [string, string[]][] = [
      ['A5', ['basinSize:B1', 'floatKind:B1', 'pumpCurve:M1', 'valveKind:V1', 'lineSize:N1', 'couplings', 'blades']],
      ['A6', ['rainChance', 'bypassPump']], ['C1:X1', ['sawLine', 'overcut']], ['D2:CH1', ['recessUp:left', 'recessUp:right', 'recessDown:left', 'recessDown:right', 'braces', 'invertUp', 'invertDown']],
      ['E5:P1', ['drop', 'held', 'clearing']], ['F1:B1', ['plumb', 'rimLevel', 'lidAboveSod']], ['F4:M1', ['temperature', 'cured']], ['G1:N1', ['cover', 'temperature', 'cured']], ['G3:N1', ['ran']],
      ['H1', ['gfciTrips', 'voltageDrop']], ['H2', ['sound']], ['I1:CH1', ['dowels', 'embed', 'jointDepth', 'jointSpacing']], ['I3:CH1', ['finish', 'edge']], ['J2:M1', ['starts', 'rise']], ['J5', ['slugPond', 'slugClear']],
    ];
    for (const [key, names] of rows) expect(named(key), key).toEqual(names);
    expect(asked(tern, 'C5')?.texts).toEqual(['competentPerson']);
    expect([asked(tern, 'H1')?.minPhotos, asked(tern, 'D3:CH1')?.minPhotos]).toEqual([3, 5]);
    // A quarter of a slab of 4 in, and 36 times its thickness.
    expect(asked(tern, 'I1:CH1')?.measures.slice(2).map(({ min, max }) => min ?? max)).toEqual([expect.closeTo(0.0254, 9), expect.closeTo(3.6576, 9)]);
  });
  test('a pipe is tested in either way: it holds, or it clears', () => {
    const test5 = asked(tern, 'E5:P1');
    if (test5 === undefined) throw new Error('no E5');
    const at = (n: number, name: string, value: number) => ({ verdict: 'kept' as const, fact: { id: `00000000-0000-7000-8000-00000000000${String(n)}`, deviceId: '', seq: n, deviceTime: '2026-03-02T10:00:00Z', factVersion: 1 as const, revisionId: '', itemKey: 'E5:P1', requirementHash: '', seen: [], kind: 'measured' as const, name, value } });
    const shown = (...facts: ReturnType<typeof at>[]) => { const { state, missing } = foldItem({ ...test5, evidence: ['value'] }, facts); return [state, ...missing]; };
    expect(shown()).toEqual(['open', 'value:drop', 'value:held', 'value:clearing']);
    expect(shown(at(1, 'clearing', 20))).toEqual(['proven']);
    expect(shown(at(1, 'drop', 0.01))).toEqual(['started', 'value:held']);
    expect(shown(at(1, 'drop', 0.01), at(2, 'held', 900))).toEqual(['proven']);
    expect(shown(at(1, 'clearing', 20), at(2, 'drop', 0.05))).toEqual(['failed', 'outside:drop', 'correction']);
    expect(shown(at(1, 'clearing', 40))).toEqual(['failed', 'outside:clearing', 'correction']);
  });
});

function anySite(name: string) {
  return DesignDocumentSchema.parse(JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')));
}

function lindqvist() {
  return anySite('lindqvist');
}
