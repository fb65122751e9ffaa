import type { GasRule } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, post } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

const entered = { gasCompany: 'Alder Gas', rule: 'Leave a running engine as it is and walk away from it.', source: 'Their safety sheet for excavators, page 2', readOn: '2026-03-01' };
const list = async (of: TestCompany, who: 'owner' | 'crew' = 'crew') => (await get<{ items: GasRule[] }>(of[who].agent, '/gas-rules')).items;

describe('what a gas company told to do when its line is hit', () => {
  it('is entered by the owner with its source, read by the crew, and seen by no other company', async () => {
    test.clock.set('2026-03-02T15:00:00Z');
    expect(await list(ours)).toEqual([]);
    await post(ours.estimator.agent, '/gas-rules', entered, 403);
    await post(ours.crew.agent, '/gas-rules', entered, 403);
    await post(ours.owner.agent, '/gas-rules', { ...entered, source: '' }, 400);
    await post(ours.owner.agent, '/gas-rules', { ...entered, readOn: '2026-03-03' }, 400);
    const made = await post<GasRule>(ours.owner.agent, '/gas-rules', entered, 201);
    expect(made).toMatchObject({ ...entered, by: 'Test owner', at: '2026-03-02T15:00:00.000Z', inForce: true });
    expect(await list(ours)).toEqual([made]);
    expect(await list(theirs, 'owner')).toEqual([]);
  });

  it('replaces the one before of the same gas company, is taken back by an empty one, and every earlier one stays', async () => {
    test.clock.set('2026-03-02T16:00:00Z');
    await post(ours.owner.agent, '/gas-rules', { ...entered, gasCompany: 'Fern Gas', rule: 'Shut the engine off only from away.' }, 201);
    test.clock.forward(60);
    await post(ours.owner.agent, '/gas-rules', { ...entered, gasCompany: 'ALDER GAS', rule: 'Another word', readOn: '2026-03-02' }, 201);
    expect((await list(ours)).map(({ gasCompany, inForce }) => [gasCompany, inForce])).toEqual([['ALDER GAS', true], ['Fern Gas', true], ['Alder Gas', false]]);
    test.clock.forward(60);
    await post(ours.owner.agent, '/gas-rules', { ...entered, rule: '', source: 'They told us by phone' }, 201);
    expect((await list(ours)).filter(({ inForce }) => inForce).map(({ gasCompany }) => gasCompany)).toEqual(['Fern Gas']);
    expect(await list(ours)).toHaveLength(4);
    const { items } = await get<{ items: { action: string }[] }>(ours.owner.agent, '/audit?limit=100');
    expect(items.filter(({ action }) => action.startsWith('gasRule.')).map(({ action }) => action)).toEqual(['gasRule.takenBack', 'gasRule.entered', 'gasRule.entered', 'gasRule.entered']);
  });
});
