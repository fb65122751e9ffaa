import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../document/check.ts';
import { partRules } from '../../document/rules.ts';
import { generatedDocument } from './document.ts';

const documents = Array.from({ length: 400 }, (_, seed) => generatedDocument(seed));

describe('generated documents', () => {
  test('can all be computed', () => {
    for (const document of documents) checkDocument(document);
    expect(documents).toHaveLength(400);
  });

  test('hold every kind of part, loss, response and storm', () => {
    const kinds = new Set(documents.flatMap(({ system }) => system.parts.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(Object.keys(partRules).sort());
    const catchments = documents.flatMap(({ site }) => site.catchments);
    expect([...new Set(catchments.map(({ loss }) => loss.method))].sort()).toEqual(['curveNumber', 'greenAmpt', 'horton', 'volumetric']);
    expect([...new Set(catchments.map(({ response }) => response))].sort()).toEqual(['instantaneous', 'kinematic', 'unitHydrograph']);
    expect(new Set(documents.map(({ rain }) => rain.storm.method)).size).toBeGreaterThanOrEqual(4);
  });

  test('are pumped, by gravity, infiltrating and without a system; with one to three low spots', () => {
    const has = (kind: string) => documents.filter(({ system }) => system.parts.some((part) => part.kind === kind)).length;
    expect(has('pump')).toBeGreaterThan(100);
    expect(documents.length - has('pump')).toBeGreaterThan(100);
    expect(documents.filter(({ system }) => system.parts.some((part) => part.kind === 'outlet' && part.dryWell !== null)).length).toBeGreaterThan(30);
    expect(documents.filter(({ system }) => system.parts.length === 0).length).toBeGreaterThan(5);
    expect(new Set(documents.map(({ site }) => site.lowSpots.length))).toEqual(new Set([1, 2, 3]));
  });

  test('follow from the seed alone', () => {
    expect(generatedDocument(17)).toEqual(documents[17]);
    expect(JSON.stringify(documents[18])).not.toBe(JSON.stringify(documents[17]));
  });

  test('keep to the schemes that are asked for', () => {
    for (let seed = 0; seed < 50; seed += 1) {
      const { system } = generatedDocument(seed, { schemes: ['gravity'], recirculation: false });
      expect(system.parts.some((part) => part.kind === 'pump' || (part.kind === 'outlet' && (part.returns !== null || part.dryWell !== null)))).toBe(false);
    }
  });
});
