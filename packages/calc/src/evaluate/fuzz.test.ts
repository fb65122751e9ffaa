import { describe, expect, test, vi } from 'vitest';
import { CalcProblem } from '../common/problem.ts';
import type { DesignDocument } from '../document/document.ts';
import { DocumentError } from '../document/error.ts';
import { canonicalText } from '../testing/canonical.ts';
import { isSoak, isWhole, seedsOf } from '../testing/counts.ts';
import { fixtureText } from '../testing/fixtures.ts';
import { generatedDocument } from '../testing/generate/document.ts';
import { Draw } from '../testing/generate/draw.ts';
import { broken, changedText, gentlyChanged } from '../testing/mutations.ts';
import { withShortStorm } from '../testing/shortStorm.ts';
import { demoSite } from '../testing/sites.ts';
import { tryAll } from '../testing/trials.ts';
import { parseAtlas14 } from '../rain/parseAtlas14.ts';
import { parseHourly } from '../record/parseHourly.ts';
import { parseSeries } from '../record/parseSeries.ts';
import { MISSING } from '../record/rainRecord.ts';
import { evaluate } from './evaluate.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: isSoak ? 24 * 3_600_000 : 600_000 });

const demos = [demoSite('tern-hollow'), demoSite('ridgeback'), demoSite('sallow-bend')];
const files = ['rain/pulaskiDepthInches.csv', 'rain/pointIntensityMetric.csv', 'rain/annArborDepthInchesLimits.csv'].map(fixtureText);

/** Evaluated to finite numbers, or refused with a code and a path; anything else throws. */
function outcomeOf(document: DesignDocument, band: boolean): 'routed' | 'refused' {
  try {
    const evaluation = evaluate(document, { band });
    canonicalText(evaluation);
    if (!(evaluation.massError < 1e-6)) throw new Error(`mass error ${evaluation.massError}`);
    return 'routed';
  } catch (error) {
    if (!(error instanceof DocumentError)) throw error;
    if (!/^(\/[^/]+)*$/.test(error.path)) throw new Error(`no path: ${error.path}`, { cause: error });
    return 'refused';
  }
}

/** Nearly all generated documents ask for one storm of an hour, so that a hundred thousand can be tried; one of thirty for all storms that it holds. */
function documentCase(draw: Draw, seed: number): DesignDocument {
  if (draw.chance(0.01)) return draw.pick(demos);
  const document = generatedDocument(seed);
  return draw.chance(0.97) ? withShortStorm(document) : document;
}

/** Some weeks of an hourly record, and one of finer readings. */
const records = [fixtureText('record/hourlyBeltsville.csv').split('\n').slice(0, 40).join('\n'), 'time,rain (in)\n2020-01-01 00:00,0.01\n2020-01-01 00:15,0.20\n2020-01-01 00:30,0\n2020-01-01 00:45,0.05\n'];

/** Mostly read as what it is, now and then as the other kind. */
function recordCase(draw: Draw): string {
  const kind = draw.whole(0, 1);
  const asHourly = draw.chance(0.9) === (kind === 0);
  const text = changedText(records[kind]!, draw);
  try {
    const { depths, ...record } = asHourly ? parseHourly(text) : parseSeries(text);
    canonicalText(record);
    for (const depth of depths) if (!(depth === MISSING || depth >= 0)) throw new Error(`depth ${depth}`);
    return 'record read';
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    return 'record refused';
  }
}

function csvCase(draw: Draw): string {
  if (draw.chance(0.4)) return recordCase(draw);
  const text = changedText(draw.pick(files), draw);
  try {
    const { table } = parseAtlas14(draw.chance(0.5) ? text : new TextEncoder().encode(text));
    canonicalText(table);
    return 'table read';
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    return 'table refused';
  }
}

/** Eight of ten are valid documents with other numbers, the rest is broken or a mutated table or record of rain. */
function oneCase(seed: number): string {
  const draw = new Draw(seed);
  const kind = draw.between(0, 1);
  if (kind < 0.11) return csvCase(draw);
  const document = documentCase(draw, seed);
  if (kind < 0.2) return `broken ${outcomeOf(broken(document, draw), false)}`;
  return `changed ${outcomeOf(gentlyChanged(document, draw), draw.chance(0.002))}`;
}

describe('any document and any file', () => {
  test('is evaluated to finite numbers or refused with a code and a path, never anything else', async () => {
    const seeds = seedsOf(1, 2000, 100_000);
    const { outcomes } = await tryAll('fuzz', seeds, oneCase, isSoak);
    if (!isWhole) return;
    expect((outcomes['changed routed'] ?? 0) / seeds.length).toBeGreaterThanOrEqual(0.6);
    for (const outcome of ['broken refused', 'changed refused', 'table read', 'table refused', 'record read', 'record refused']) expect(outcomes[outcome], outcome).toBeGreaterThan(seeds.length / 200);
  });

  test.each([null, undefined, 0, 'text', [], {}, { schema: 'yardfall.design', version: 2 }])('refuses %j as a document', (value) => {
    expect(() => evaluate(value as unknown as DesignDocument)).toThrow(DocumentError);
  });
});
