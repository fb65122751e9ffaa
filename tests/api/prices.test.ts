import type { PriceSheet } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, issuedRevision, post, priceEverything, type WithRevision } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let made: WithRevision;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  made = await issuedRevision(ours);
});
afterAll(() => test.close());

const rates = { marginBasisPoints: 3800, taxBasisPoints: 700, contingencyBasisPoints: 600, labourRate: 420_000 };
/** The worked example of the flagship, with the lines as they were printed (ours). */
const flagship = [
  ['Channel, 18 ft', 'material', 'ft', 18, 320_000], ['Ends', 'material', 'lump', 1, 700_000], ['4 in pipe', 'material', 'ft', 134, 26_000], ['Fittings', 'material', 'lump', 1, 1_650_000],
  ['Basin', 'material', 'each', 1, 4_200_000], ['Pump', 'material', 'each', 1, 3_300_000], ['Check, union, valve', 'material', 'lump', 1, 780_000], ['1 1/2 in line', 'material', 'ft', 112, 13_500],
  ['Line fittings', 'material', 'lump', 1, 700_000], ['Emitters', 'material', 'lump', 1, 1_440_000], ['Stone', 'material', 'lump', 1, 1_550_000], ['Fabric', 'material', 'lump', 1, 400_000],
  ['Bags round the channel', 'material', 'bag', 26, 65_000], ['Bags against floating', 'material', 'bag', 11, 65_000], ['Dowels', 'material', 'lump', 1, 900_000], ['Alarm', 'material', 'each', 1, 950_000],
  ['Sod', 'material', 'lump', 1, 540_000], ['Sundries', 'material', 'lump', 1, 600_000], ['Equipment and dump', 'equipment', 'lump', 1, 4_650_000], ['Electrician', 'subcontract', 'lump', 1, 9_500_000],
  ['Gutters', 'subcontract', 'lump', 1, 5_200_000], ['Permit', 'permit', 'lump', 1, 850_000],
] as const;
const lineOf = ([name, kind, unit, quantity, unitCost]: (typeof flagship)[number], index: number) =>
  ({ code: `line.${String(index)}`, name, kind, unit, quantity, unitCost, taxable: kind === 'material', origin: 'allowance', reason: null });
const labour = { code: 'labour.crew', name: 'Crew labor', kind: 'labour', unit: 'hour', quantity: 62.5, unitCost: 1, taxable: false, origin: 'override', reason: null };

const replace = (sheet: PriceSheet, body: object) =>
  ours.estimator.agent.put(`/api/v1/jobs/${sheet.jobId}/price-sheets/${sheet.id}`).set(key()).set('If-Match', `"${String(sheet.version)}"`).send(body);

describe('a price sheet', () => {
  it('names what the price list lacks, and takes it once it is there', async () => {
    const bare = await post<PriceSheet>(ours.estimator.agent, `/jobs/${made.job.id}/price-sheets`, { revisionId: made.revision.id }, 201);
    expect(bare.lines).toEqual([]);
    expect(bare.missing).toContain('channel.4');
    await priceEverything(test, ours);
    const sheet = await post<PriceSheet>(ours.estimator.agent, `/jobs/${made.job.id}/price-sheets`, { revisionId: made.revision.id }, 201);
    expect(sheet.missing).toEqual([]);
    expect(sheet.lines.find(({ code }) => code === 'channel.4')).toMatchObject({ quantity: 18, unit: 'ft', cost: 1800, origin: 'drawing' });
    const hours = sheet.lines.find(({ code }) => code === 'labour.crew');
    const units = sheet.lines.filter(({ code }) => code !== 'labour.crew').reduce((sum, { quantity }) => sum + quantity, 0);
    expect(hours?.quantity).toBeCloseTo(units / 10, 3);
    expect(hours?.unitCost).toBe(420_000);
  });

  it('prices the flagship to the cent, with margin beside markup and the loss of the mistake', async () => {
    const sheet = await post<PriceSheet>(ours.estimator.agent, `/jobs/${made.job.id}/price-sheets`, { revisionId: made.revision.id }, 201);
    const stored = (await replace(sheet, { ...rates, lines: [...flagship.map(lineOf), labour] }).expect(200)).body as PriceSheet;
    expect(stored.totals).toMatchObject({
      tax: 21_610, direct: 794_820, contingency: 47_689, cost: 842_509, price: 1_358_885, margin: 516_376, marginBasisPoints: 3800, markupBasisPoints: 6129, priceAsMarkup: 1_162_662, lossAsMarkup: 196_223,
    });
    expect(stored.totals.byKind).toEqual({ material: 308_710, equipment: 46_500, subcontract: 147_000, permit: 8500, labour: 262_500 });
    expect(stored.lines.at(-1)).toMatchObject({ unitCost: 420_000, cost: 262_500 });
    expect(stored.version).toBe(sheet.version + 1);
    const { items } = await get<{ items: PriceSheet[] }>(ours.owner.agent, `/jobs/${made.job.id}/price-sheets`);
    expect(items.find(({ id }) => id === sheet.id)?.totals).toEqual(stored.totals);
    await replace(sheet, { ...rates, lines: [] }).expect(412);
  });

  it('is not for the crew, by the API or by the database', async () => {
    const asked = await Promise.all(['/price-items', `/jobs/${made.job.id}/price-sheets`].map((path) => ours.crew.agent.get(`/api/v1${path}`)));
    expect(asked.map(({ status, body }) => [status, body.code])).toEqual([[403, 'auth.forbidden'], [403, 'auth.forbidden']]);
  });

  it.each([['a margin of everything', { marginBasisPoints: 10_000 }], ['half a basis point', { taxBasisPoints: 0.5 }], ['a negative price', { lines: [{ ...labour, unitCost: -1 }] }]])('refuses %s', async (_, change) => {
    const sheet = await post<PriceSheet>(ours.estimator.agent, `/jobs/${made.job.id}/price-sheets`, { revisionId: made.revision.id }, 201);
    const refused = await replace(sheet, { ...rates, lines: [], ...change });
    expect([refused.status, refused.body.code]).toEqual([400, 'request.invalid']);
  });
});
