import type { ChecklistItem, FieldFact, Portal } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { viewOf } from '../../apps/web/src/features/checklists/model/view.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, releasedJob, siteDocument, type WithOffer } from '../support/builders.ts';
import { mayDig, Phone } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let released: WithOffer;
let crew: Phone;
let office: Phone;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  released = await releasedJob(test, ours, siteDocument('tern-hollow'));
  crew = await Phone.of(test, ours.crew, released.job.id);
  office = await Phone.of(test, ours.owner, released.job.id);
}, 300_000);
afterAll(() => test.close());

const begin = async (itemKey: string) => {
  const { status, body } = await ours.crew.agent.post(`/api/v1/jobs/${released.job.id}/checklist/${encodeURIComponent(itemKey)}/begin`).set(key()).send({});
  return status === 200 ? 'may begin' : (body.issues as { path: string }[]).map(({ path }) => path).join(' ');
};
/** What holds a step on the phone, which asks nobody. */
const onPhone = async (itemKey: string, waiting: readonly FieldFact[] = []) =>
  viewOf(await crew.checklist(), waiting, test.clock.now().getTime()).items.find(({ item }) => item.key === itemKey)?.heldBy.map(({ holdPoint }) => holdPoint).join(' ');
const verdicts = async (phone: Phone, ...facts: FieldFact[]) => (await phone.send(facts)).facts.map(({ verdict, reason }) => `${verdict} ${String(reason)}`);
const keyOf = async (template: string) => (await crew.checklist()).items.find((item) => item.template === template)?.key ?? '';
const prove = async (phone: Phone, ...templates: string[]) => {
  for (const template of templates) for (const { key: one } of (await crew.checklist()).items.filter((item) => item.template === template)) await phone.prove(one);
};

describe('a contract that can still be cancelled', () => {
  it('is not ticked before midnight of the third business day, by nobody; the list says from when on', async () => {
    const a1 = await office.item('A1');
    // Accepted on Monday 2 March 2026, local time of the property.
    expect(a1.requirement.tickFrom).toBe('2026-03-06T00:00:00-05:00');
    expect(await verdicts(office, office.fact(a1, { kind: 'ticked', note: '' }))).toEqual(['refused stillCancellable']);
    expect((await office.item('A1')).state).toBe('open');
    expect((await get<Portal>(released.customer, '/portal')).times).toEqual([{ code: 'portal.times.cancel', params: { on: '2026-03-05' } }]);
    test.clock.set('2026-03-06T14:00:00Z');
    expect(await verdicts(office, office.fact(await office.item('A1'), { kind: 'ticked', note: '' }))).toEqual(['kept null']);
    expect((await office.item('A1')).state).toBe('proven');
  });
});

describe('rain that is likely while the old drain is cut', () => {
  it('holds saw, breaker and digging until the pump is aboard, for a direct call as on the phone', async () => {
    await mayDig(ours.crew.agent, released.job.id);
    await prove(crew, 'A2', 'B2');
    await prove(office, 'B6');
    await prove(crew, 'B5', 'C3');
    const a6 = await crew.item('A6');
    const say = (name: string, value: number) => crew.fact(a6, { kind: 'measured', name, value });
    await crew.send([say('rainChance', 0.55), await crew.photo(a6), crew.fact(a6, { kind: 'ticked', note: '' })]);
    expect(await crew.item('A6')).toMatchObject({ state: 'started', missing: ['value:bypassPump'], holdPoint: 'HP-rain' });
    for (const template of ['C1', 'C2', 'C4', 'C6']) {
      const one = await keyOf(template);
      expect([await begin(one), await onPhone(one)], template).toEqual(['HP-rain', 'HP-rain']);
      expect(await verdicts(crew, crew.fact(await crew.item(one), { kind: 'ticked', note: '' })), template).toEqual(['refused held:HP-rain']);
    }
    const aboard = say('bypassPump', 1);
    expect(await onPhone(await keyOf('C4'), [aboard])).toBe('');
    expect(await verdicts(crew, aboard)).toEqual(['kept null']);
    expect(await begin(await keyOf('C4'))).toBe('may begin');
  });
});

describe('the trench', () => {
  const look = async (): Promise<FieldFact[]> => crew.all('C5');
  const tick = async (item: ChecklistItem) => verdicts(crew, crew.fact(item, { kind: 'ticked', note: '' }));

  it('is looked at before anybody works in it', async () => {
    await prove(crew, 'C4');
    const e2 = await keyOf('E2');
    expect([await begin(e2), await onPhone(e2)]).toEqual(['HP-trench', 'HP-trench']);
    await crew.send(await look());
    expect([await begin(e2), await onPhone(e2)]).toEqual(['may begin', '']);
  });

  it('is looked at again on the next day, also for work that has begun, and the phone knows without a signal', async () => {
    const e2 = await crew.item(await keyOf('E2'));
    test.clock.set('2026-03-07T13:00:00Z');
    expect(await crew.item('C5')).toMatchObject({ state: 'open', missing: ['tick', 'photo:1', 'text:competentPerson'] });
    expect(await onPhone(e2.key)).toBe('HP-trench');
    expect(await onPhone(await keyOf('C6'))).toContain('HP-trench again');
    expect(await tick(e2)).toEqual(['refused held:HP-trench']);
    const waiting = await look();
    expect(await onPhone(e2.key, waiting)).toBe('');
    await crew.send(waiting);
    expect(await tick(e2)).toEqual(['kept null']);
  });

  it('is looked at again after rain, which anybody may tell, and what was done before it stays done', async () => {
    const [c5, e2] = [await crew.item('C5'), await crew.item(await keyOf('E2'))];
    const rain = crew.fact(c5, { kind: 'rained' });
    expect(await onPhone(e2.key, [rain])).toBe('HP-trench');
    expect(await verdicts(crew, rain)).toEqual(['kept null']);
    expect(await tick(await crew.item(e2.key))).toEqual(['refused held:HP-trench']);
    await crew.send(await look());
    expect(await tick(await crew.item(e2.key))).toEqual(['kept null']);
    // A step that is not asked for each day knows nothing of rain.
    expect(await verdicts(crew, crew.fact(await crew.item('B7'), { kind: 'rained' }))).toEqual(['refused noSuchMeasure']);
  });
});

describe('what was glued', () => {
  it('is put under pressure when it has cured at the temperature that was written down', async () => {
    await prove(crew, 'F5', 'F6');
    await prove(crew, 'F2', 'F7', 'F4');
    const [g1, g3] = [await crew.item(await keyOf('G1')), await keyOf('G3')];
    const told = (await crew.all(g1.key)).map((fact) => (fact.kind === 'measured' && fact.name === 'cured' ? { ...fact, value: 600 } : fact));
    await crew.send(told);
    expect(await crew.item(g1.key)).toMatchObject({ state: 'proven', holdPoint: 'HP-cure' });
    expect([await begin(g3), await onPhone(g3)]).toEqual(['HP-cure', 'HP-cure']);
    expect(await verdicts(crew, crew.fact(await crew.item(g3), { kind: 'measured', name: 'ran', value: 300 }))).toEqual(['refused held:HP-cure']);
    // 1 1/2 in at 70 °F, glued ten minutes before: three hours in damp air.
    test.clock.forward(3 * 3600 - 700);
    expect(await begin(g3)).toBe('HP-cure');
    test.clock.forward(200);
    expect([await begin(g3), await onPhone(g3)]).toEqual(['may begin', '']);
  });
});

describe('the customer reads', () => {
  const told = async () => Object.fromEntries((await get<Portal>(released.customer, '/portal')).times.map(({ code, params }) => [code, params]));
  it('that a trench is open and who looked at it, and why a pump is here', async () => {
    expect(await told()).toMatchObject({ 'portal.times.trench': { name: 'A-17' }, 'portal.times.pump': {} });
    expect(await told()).not.toHaveProperty('portal.times.cancel');
  });
  it('until when to keep off the new concrete: on foot a day, with wheels a week', async () => {
    await prove(crew, 'C1', 'C2', 'D1', 'D2', 'I1', 'D4', 'I2');
    const pour = await keyOf('I3');
    expect(await begin(pour)).toBe('may begin');
    await crew.prove(pour);
    const done = test.clock.now().getTime();
    const { foot, wheels } = (await told())['portal.times.concrete'] as { foot: string; wheels: string };
    expect([Date.parse(foot) - done, Date.parse(wheels) - done].map((ms) => Math.round(ms / 3_600_000))).toEqual([24, 168]);
    test.clock.forward(25 * 3600);
    expect(await told()).toMatchObject({ 'portal.times.wheels': { wheels } });
    test.clock.forward(6 * 86_400);
    expect(Object.keys(await told()).filter((code) => /concrete|wheels/.test(code))).toEqual([]);
  });
});
