import { commissioningFlow, type DesignDocument } from '@yardfall/calc';
import { type Checklist, type FieldFact, handoverStep, type Job, type Portal } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { viewOf } from '../../apps/web/src/features/checklists/model/view.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, post, releasedJob, siteDocument, type Agent, type WithOffer } from '../support/builders.ts';
import { mayDig, Phone } from '../support/work.ts';

/** What each hold point is opened by and what it guards, as the trade's install sequence lists it (common practice). B6 comes before B5 as well. */
const holdPoints = [
  { id: 'HP-1', proves: ['A2'], guards: ['B5', 'C1', 'C2', 'C3', 'C4', 'C5', 'C6', 'C7', 'C8'] },
  // A pump at hand where the old drain is cut and rain is likely: common practice.
  { id: 'HP-rain', proves: ['A6'], guards: ['C1', 'C2', 'C4', 'C6'] },
  // 29 CFR 1926.651(k)(1).
  { id: 'HP-trench', proves: ['C5'], guards: ['E1', 'E2', 'E3', 'E5', 'E6', 'F1', 'F2', 'G1', 'G3', 'G4', 'G7'] },
  { id: 'HP-2', proves: ['B2'], guards: ['C4', 'C6', 'D2', 'E1', 'F1'] },
  { id: 'HP-3', proves: ['B6', 'B5'], guards: ['C1', 'C2'] },
  { id: 'HP-4', proves: ['C3'], guards: ['C4', 'C6'] },
  { id: 'HP-5', proves: ['D2'], guards: ['D3', 'I3'] },
  { id: 'HP-6', proves: ['E1'], guards: ['E5'] },
  { id: 'HP-7', proves: ['E5'], guards: ['E6'] },
  { id: 'HP-8', proves: ['F2'], guards: ['F7', 'I6'] },
  { id: 'HP-9', proves: ['F5', 'F6', 'F7'], guards: ['G3'] },
  { id: 'HP-cure', proves: ['F4', 'G1'], guards: ['G3'] },
  { id: 'HP-10', proves: ['G3'], guards: ['G7'] },
  { id: 'HP-11', proves: ['G6'], guards: ['G7'] },
  { id: 'HP-12', proves: ['H1'], guards: ['J1', 'J2'] },
  { id: 'HP-13', proves: ['D4', 'I1', 'I2'], guards: ['I3'] },
  { id: 'HP-14', proves: ['J1', 'J4'], guards: ['J8', 'J9'] },
  { id: 'HP-15', proves: ['J7', 'J9'], guards: [handoverStep] },
];

/** Tern Hollow with its roof line to the curb, which the city inspects, and a trench beside the foundation: every hold point and every guarded item stands in its list. */
function everything(): DesignDocument {
  const document = siteDocument('tern-hollow');
  const parts = document.system.parts.map((part) => (part.kind === 'outlet' && part.id === 'O2' ? { ...part, outletKind: 'curb' as const, questions: { ...part.questions, rightOfWayPermit: 'yes' as const } } : part));
  return { ...document, system: { parts }, construction: { ...document.construction, foundationWithin1ft: true } };
}

let test: TestApp;
let ours: TestCompany;
let released: WithOffer;
let phones: { readonly name: string; readonly agent: Agent; readonly phone: Phone }[];
let crew: Phone;
let owner: Phone;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  released = await releasedJob(test, ours, everything());
  phones = await phonesOn(released.job);
  [crew, owner] = [phones[0]?.phone as Phone, phones[2]?.phone as Phone];
}, 300_000);
afterAll(() => test.close());

const phonesOn = (job: Job) => Promise.all([{ name: 'crew', person: ours.crew }, { name: 'estimator', person: ours.estimator }, { name: 'owner', person: ours.owner }]
  .map(async ({ name, person }) => ({ name, agent: person.agent, phone: await Phone.of(test, person, job.id) })));
const begin = (agent: Agent, jobId: string, itemKey: string) => agent.post(`/api/v1/jobs/${jobId}/checklist/${encodeURIComponent(itemKey)}/begin`).set(key()).send({});
const waive = (agent: Agent, jobId: string, itemKey: string) => agent.post(`/api/v1/jobs/${jobId}/checklist/${encodeURIComponent(itemKey)}/waive`).set(key()).send({ reason: `The owner has looked at ${itemKey} himself` });
const handOver = (agent: Agent, jobId: string) => agent.post(`/api/v1/jobs/${jobId}/handover`).set(key()).send({ asBuilt: [], pumpSerial: 'A-17', breaker: '14', deviations: '', customerName: 'Marisol Pruett', warrantyYears: 2 });

/** The list as the page shows it on a phone without a signal: the office's last answer and what waits on the phone. */
function offline(list: Checklist, waiting: readonly FieldFact[] = []) {
  const view = viewOf(list, waiting, test.clock.now().getTime());
  return {
    holds: (itemKey: string) => view.items.find(({ item }) => item.key === itemKey)?.heldBy.map(({ holdPoint }) => holdPoint) ?? [],
    open: (id: string) => view.holdPoints.filter((point) => point.id === id).every(({ open }) => open),
  };
}
const keysOf = (list: Checklist, templates: readonly string[]) => list.items.filter(({ template }) => templates.includes(template)).map((item) => item.key);
/** What this hold point guards of the list; a pipe without shots of its fall is not held by them. */
const guardedBy = (list: Checklist, id: string, guards: readonly string[]) => {
  const own = list.holdPoints.filter((point) => point.id === id).flatMap((point) => point.guards).filter((one) => one !== handoverStep);
  expect(keysOf(list, guards).filter((one) => !own.includes(one)), id).toEqual(id === 'HP-6' ? ['E5:R1'] : []);
  return own;
};
const heldBy = (list: Checklist, itemKey: string) => list.items.find((item) => item.key === itemKey)?.heldBy.map(({ holdPoint }) => holdPoint) ?? [];
/** Whoever may tick the item. */
const whoTicks = (list: Checklist, itemKey: string) => {
  const signers = list.items.find((item) => item.key === itemKey)?.requirement.signers ?? [];
  return signers.includes('owner') && !signers.includes('crewLead') ? owner : crew;
};

/** Refused for everybody, by the beginning of the work and by whatever is recorded of it. */
async function isRefused(list: Checklist, id: string, guarded: string): Promise<void> {
  for (const { name, agent, phone } of phones) {
    const refused = await begin(agent, released.job.id, guarded);
    expect([refused.status, refused.body.code], `${name} begins ${guarded}`).toEqual([409, 'checklist.held']);
    expect(refused.body.issues.map(({ path }: { path: string }) => path), `${name} begins ${guarded}`).toContain(id);
    const item = list.items.find((one) => one.key === guarded);
    if (item === undefined) throw new Error(`no ${guarded}`);
    const { facts } = await phone.send([phone.fact(item, { kind: 'begun' }), phone.fact(item, { kind: 'ticked', note: '' }), phone.fact(item, { kind: 'notApplicable', reason: 'not here' }, { itemKey: 'Z9' })]);
    expect(facts.map(({ verdict, reason }) => `${verdict} ${(reason ?? '').split(':')[0] ?? ''}`), `${name} records ${guarded}`).toEqual([expect.stringMatching(/^refused (held|officeOnly)$/), expect.stringMatching(/^refused (held|officeOnly)$/), 'late noSuchItem']);
  }
}

async function pumpDown(job: Job, document: DesignDocument): Promise<void> {
  const basin = document.system.parts.find((part) => part.kind === 'basin');
  if (basin?.kind !== 'basin') throw new Error('the site has no basin');
  const [upperLevel, lowerLevel] = [basin.onLevel, basin.onLevel - 0.254];
  const volume = (Math.PI / 4) * basin.diameter ** 2 * 0.254;
  const seconds = volume / commissioningFlow(document, 'M1', (upperLevel + lowerLevel) / 2).netFlow;
  const run = { upperLevel, lowerLevel, volume, seconds, emptyLine: false };
  await post(ours.crew.agent, `/jobs/${job.id}/proof-tests`, { pump: 'M1', runs: [run, run, run], note: '' }, 201);
}

describe('every hold point', () => {
  it('stands in the list with the items it guards, each closed at the start', async () => {
    const list = await crew.checklist();
    expect(new Set(list.holdPoints.map(({ id }) => id))).toEqual(new Set(['HP-3 scan', 'HP-trench again', ...holdPoints.map(({ id }) => id)]));
    // Digging on waits for a look only when there was one before it.
    expect(list.holdPoints.filter(({ open }) => open).map(({ id }) => id)).toEqual(['HP-trench again']);
    for (const { id, proves, guards } of holdPoints) {
      const points = list.holdPoints.filter((point) => point.id === id);
      const templates = (keys: readonly string[]) => [...new Set(keys.map((one) => one.split(':')[0] ?? ''))].toSorted((a, b) => a.localeCompare(b));
      expect(templates(points.flatMap((point) => point.items)), id).toEqual(proves.toSorted((a, b) => a.localeCompare(b)));
      expect(templates(points.flatMap((point) => point.guards)), id).toEqual(guards.toSorted((a, b) => a.localeCompare(b)));
    }
  });

  describe.each(holdPoints)('$id, shown by $proves, before $guards', ({ id, proves, guards }) => {
    it('is closed on the phone without a signal and in the office, for crew, estimator and owner alike', async () => {
      const list = await crew.checklist();
      const guarded = guardedBy(list, id, guards);
      expect(guarded.length > 0 || guards.includes(handoverStep)).toBe(true);
      for (const one of guarded) {
        expect(offline(list).holds(one), one).toContain(id);
        expect(heldBy(list, one), one).toContain(id);
      }
      expect(offline(list).open(id)).toBe(false);
      const [first] = guarded;
      if (first !== undefined) await isRefused(list, id, first);
      else for (const { agent } of phones.slice(1)) expect((await handOver(agent, released.job.id)).body).toMatchObject({ code: 'handover.notReady' });
    });

    it('is not opened by part of its evidence, nor by "does not apply", nor by a waiver of anybody but the owner', async () => {
      const list = await crew.checklist();
      const [item] = list.items.filter(({ template }) => template === proves.at(-1));
      if (item === undefined) throw new Error(`no ${String(proves)}`);
      for (const { agent } of phones.slice(0, 2)) expect((await waive(agent, released.job.id, item.key)).status).toBe(403);
      const { facts } = await crew.send([crew.fact(item, { kind: 'waived', reason: 'the crew waives it' }), crew.fact(item, { kind: 'notApplicable', reason: 'not needed here' })]);
      expect(facts.map(({ reason }) => reason)).toEqual(['ownerOnly', 'evidenceOnly']);
      const last = item.requirement.evidence.at(-1);
      const kinds = { tick: 'ticked', photo: 'photo', value: 'measured', signature: 'signed', document: 'document', text: 'written' } as const;
      const part = (await crew.all(item.key)).filter(({ kind }) => last === undefined || kind !== kinds[last]);
      for (const one of guardedBy(list, id, guards)) expect(offline(list, part).holds(one), one).toContain(id);
      expect(offline(list, part).open(id)).toBe(false);
    });

    it('opens with its evidence, on the phone without a signal and then in the office', async () => {
      if (id === 'HP-1') await mayDig(ours.crew.agent, released.job.id);
      if (id === 'HP-14') await pumpDown(released.job, everything());
      const waiting: FieldFact[] = [];
      for (const template of proves) {
        const before = await crew.checklist();
        for (const itemKey of keysOf(before, [template])) {
          const facts = await whoTicks(before, itemKey).all(itemKey);
          waiting.push(...facts);
          const view = offline(before, waiting);
          if (template === proves.at(-1) && itemKey === keysOf(before, [template]).at(-1)) {
            for (const one of guardedBy(before, id, guards)) expect(view.holds(one), one).not.toContain(id);
            expect(view.open(id)).toBe(true);
          }
          const sent = await whoTicks(before, itemKey).send(facts);
          expect(sent.facts.map(({ verdict, reason }) => `${verdict} ${String(reason)}`), itemKey).toEqual(facts.map(() => 'kept null'));
        }
      }
      const list = await crew.checklist();
      for (const one of guardedBy(list, id, guards)) expect(heldBy(list, one), one).not.toContain(id);
      expect(list.holdPoints.filter((point) => point.id === id).map(({ open, waived }) => [open, waived])).toEqual(list.holdPoints.filter((point) => point.id === id).map(() => [true, false]));
      const [first] = guardedBy(list, id, guards);
      if (first !== undefined) expect(JSON.stringify((await begin(ours.crew.agent, released.job.id, first)).body.issues ?? [])).not.toContain(`"${id}"`);
    });
  });

  it('lets the system be handed over when all of them are open and no other step is left undone', async () => {
    const refused = await handOver(ours.owner.agent, released.job.id);
    expect(refused.body).toMatchObject({ code: 'handover.notReady' });
    const left = (await crew.checklist()).items.filter(({ state }) => state !== 'proven').map((item) => item.key);
    expect(left).toEqual(expect.arrayContaining(['B1', 'E2', 'J8']));
    expect(refused.body.params.open).toBe(left.length);
    await owner.doNotApply(left);
    expect((await handOver(ours.owner.agent, released.job.id)).status).toBe(201);
  });
});

describe("the owner's waiver", () => {
  let second: WithOffer;
  beforeAll(async () => {
    second = await releasedJob(test, ours, everything());
  }, 300_000);
  const list = () => get<Checklist>(ours.owner.agent, `/jobs/${second.job.id}/checklist`);
  const told = async () => (await get<Portal>(second.customer, '/portal')).waivers;

  it('does not stand for the look at the trench: the law has it looked at each day', async () => {
    expect((await waive(ours.owner.agent, second.job.id, 'C5')).body).toMatchObject({ code: 'conflict.state' });
    const c5 = (await list()).items.find(({ key: itemKey }) => itemKey === 'C5');
    const [phone, one] = [await Phone.of(test, ours.owner, second.job.id), c5];
    if (one === undefined) throw new Error('no C5');
    expect((await phone.send([phone.fact(one, { kind: 'waived', reason: 'The owner has looked himself' })])).facts.map(({ reason }) => reason)).toEqual(['evidenceOnly']);
  });

  it.each(holdPoints.filter(({ id }) => id !== 'HP-trench'))('opens $id with a reason, and the customer reads who let what pass and why', async ({ id, proves, guards }) => {
    for (const template of proves) {
      for (const itemKey of keysOf(await list(), [template])) {
        await ours.owner.agent.post(`/api/v1/jobs/${second.job.id}/checklist/${encodeURIComponent(itemKey)}/waive`).set(key()).send({ reason: 'short' }).expect(400);
        expect((await waive(ours.owner.agent, second.job.id, itemKey)).status, itemKey).toBe(200);
      }
    }
    if (id === 'HP-1') {
      // Nobody waives the law: without a ticket that says "may dig" the digging stays held.
      for (const one of guardedBy(await list(), id, guards)) expect(heldBy(await list(), one)).toContain('HP-1');
      await mayDig(ours.crew.agent, second.job.id);
    }
    const after = await list();
    for (const one of guardedBy(after, id, guards)) {
      expect(heldBy(after, one), one).not.toContain(id);
      expect(offline(after).holds(one), one).not.toContain(id);
    }
    const mine = (await told()).filter(({ item }) => proves.includes(item.split(':')[0] ?? ''));
    const keys = keysOf(after, proves);
    expect(mine.map(({ item }) => item).sort()).toEqual([...keys].sort());
    for (const { item, holdPoint, reason, by, at } of mine) {
      expect({ holdPoint, reason, by, at }).toEqual({ holdPoint: id, reason: `The owner has looked at ${item} himself`, by: 'Test owner', at: test.clock.now().toISOString() });
    }
  });
});
