import { readFileSync } from 'node:fs';
import { describe, expect, test, vi } from 'vitest';
import { evaluate } from '../evaluate/evaluate.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { checkDocument } from './check.ts';
import type { DesignDocument } from './document.ts';
import { documentVersion, upgradeDocument } from './upgrade.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000 });

const names = ['tern-hollow', 'ridgeback', 'sallow-bend'] as const;

/** Documents as version 1 of the product wrote them. */
function written(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../fixtures/documents/${name}.version-1.json`, import.meta.url), 'utf8'));
}

/** A document without the facts that version 1 had no place for. */
function asVersionOneKnewIt(document: DesignDocument): DesignDocument {
  return changed(document, (copy) => {
    Object.assign(copy.site, { closure: null, lotArea: null });
    copy.site.soil.frostDepth = null;
    copy.site.sills.forEach((sill) => { Object.assign(sill, { soilFall: null, landing: null }); });
    copy.system.parts.forEach((part) => { if (part.kind === 'outlet') Object.assign(part, { exitDiameter: null, exitGround: null, ordinaryWater: null }); });
    if (copy.construction.electrical !== null) Object.assign(copy.construction.electrical, { burial: null, receptacleLevel: null });
  });
}

describe('documents of version 1', () => {
  test.each(names)('%s is brought to the present version and passes the check', (name) => {
    const upgraded = upgradeDocument(written(name)) as DesignDocument;
    expect(upgraded.version).toBe(documentVersion);
    expect(() => { checkDocument(upgraded); }).not.toThrow();
  });

  test.each(names)('%s gives the numbers that the same document written now gives', (name) => {
    const upgraded = evaluate(upgradeDocument(written(name)) as DesignDocument, { band: false });
    const present = evaluate(asVersionOneKnewIt(demoSite(name)), { band: false });
    expect(upgraded).toEqual(present);
  });

  test('what version 1 could not say is written down as it computed it', () => {
    const { site, rain, system, construction, limits } = upgradeDocument(written('tern-hollow')) as DesignDocument;
    expect(site.catchments.every(({ loss, response }) => loss.method === 'volumetric' && response === 'kinematic')).toBe(true);
    expect(site.lowSpots.every(({ spillsTo }) => spillsTo === null)).toBe(true);
    expect(site.spotLevels.every(({ position }) => position === null)).toBe(true);
    expect([site.breaklines, site.walls, limits]).toEqual([[], [], []]);
    expect(rain.recorded).toBeNull();
    expect([site.closure, site.lotArea, site.soil.frostDepth]).toEqual([null, null, null]);
    expect(site.sills.every(({ soilFall, landing }) => soilFall === null && landing === null)).toBe(true);
    expect(construction.electrical).toMatchObject({ burial: null, receptacleLevel: null });
    const channel = system.parts.find((part) => part.kind === 'channel');
    expect(channel).toMatchObject({ shape: 'rectangular', bottomWidth: channel?.width, steps: [] });
    expect(system.parts.filter((part) => part.kind === 'pump').map(({ power, startLevel }) => [power, startLevel])).toEqual([['mains', null]]);
    expect(system.parts.filter((part) => part.kind === 'outlet').every(({ dryWell, returns, exitDiameter, exitGround, ordinaryWater }) => [dryWell, returns, exitDiameter, exitGround, ordinaryWater].every((value) => value === null))).toBe(true);
  });
});

test.each([null, 7, 'text', [], {}, { schema: 'yardfall.design', version: 2 }, { schema: 'yardfall.design', version: 3 }])('leaves %j as it is', (value) => {
  expect(upgradeDocument(value)).toBe(value);
});

test('keeps what is broken in an old document for the check to name', () => {
  const broken = { schema: 'yardfall.design', version: 1, site: null, rain: 4, system: { parts: [null, { kind: 'channel' }] } };
  expect(upgradeDocument(broken)).toMatchObject({ version: 2, site: null, rain: 4, system: { parts: [null, { kind: 'channel' }] } });
});
