import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { commissioningFlow } from '@yardfall/calc';
import type { LibraryEntry, LibraryInput, MemberRole, Photo, RainTableRow, SignedIn, Study, Survey } from '@yardfall/contracts';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { ternHollowSurvey } from '../../apps/api/src/seed/sites/ternHollow.survey.ts';
import { inRoot } from '../../tools/paths.mjs';
import { key, makePerson, type Person } from './actors.ts';
import { call as newCall, get, noPermitNeeded, post, siteDocument } from './builders.ts';
import type { Call } from './calls.ts';
import { fieldSamples } from './fieldSamples.ts';
import { locateSamples } from './locateSamples.ts';
import { uploadSamples } from './uploadSamples.ts';
import { picture, sendPhoto, sha256 } from './work.ts';
import type { World } from './world.ts';

/** A valid call, made anew for each actor, so that whoever is allowed gets exactly the status of the contract. */
export type Sample = (world: World, role: MemberRole) => SampleCall | Promise<SampleCall>;

export interface SampleCall extends Call {
  /** The customer whom the call is about, when it is not the one of the world. */
  readonly customer?: Person['agent'];
}

const site = siteDocument('tern-hollow');
const nothing: Sample = () => ({});
const ofJob: Sample = ({ jobId }) => ({ params: { jobId } });
const version = (row: { version: number }): string => `"${row.version}"`;

const survey = (world: World): Promise<Survey> =>
  world.once('survey', () => post<Survey>(world.office, `/jobs/${world.jobId}/surveys`, { name: 'Visit', content: ternHollowSurvey }, 201));
const rainTable = (world: World): Promise<RainTableRow> =>
  world.once('rain table', () => post<RainTableRow>(world.office, `/jobs/${world.jobId}/rain-tables`, { name: randomUUID(), table: site.rain.table }, 201));
const sessionApart = async ({ test, ours }: World): Promise<string> => {
  const { id } = await makePerson(test, ours.id, ['crew']);
  return (await get<{ items: SignedIn[] }>(ours.owner.agent, '/sessions')).items.find(({ memberId }) => memberId === id)?.id ?? '';
};
const device = async ({ ours }: World): Promise<string> => (await post<{ id: string }>(ours.crew.agent, '/devices', { id: randomUUID(), name: 'Phone' }, 201)).id;
const photo = (world: World): Promise<Photo> =>
  world.once('photo', async () => {
    const { body } = await sendPhoto(world.ours.crew.agent, world.jobId, await picture(), { forCustomer: true }).expect(201);
    await world.test.app.get(Worker).drain();
    return body as Photo;
  });

/** The first fact of a survey that nobody knows yet. */
function begun(jobId: string, deviceId: string): object {
  const base = { id: randomUUID(), deviceId, seq: 1, deviceTime: '2026-03-02T14:00:00Z', factVersion: 1, jobId, surveyId: randomUUID(), entry: 'survey', seen: [] };
  return { ...base, kind: 'begun', value: { name: 'In the yard' } };
}

async function upload(): Promise<Call> {
  const bytes = await picture();
  return {
    body: { id: randomUUID(), sha256: sha256(bytes), takenAt: '2026-03-02T14:00:00Z', itemKey: null, part: null, note: 'the slider', forCustomer: false },
    file: { bytes, name: 'photo.jpg', mediaType: 'image/jpeg' },
  };
}

/** Three runs just as the design promises. */
function pumpDown(): object {
  const basin = site.system.parts.find((part) => part.kind === 'basin');
  if (basin?.kind !== 'basin') throw new Error('the site has no basin');
  const [upperLevel, lowerLevel] = [basin.onLevel, basin.onLevel - 0.254];
  const volume = (Math.PI / 4) * basin.diameter ** 2 * 0.254;
  const { netFlow } = commissioningFlow(site, 'M1', (upperLevel + lowerLevel) / 2);
  const run = { upperLevel, lowerLevel, volume, seconds: volume / netFlow, emptyLine: false };
  return { pump: 'M1', runs: [run, run, run], note: '' };
}

const rates = { marginBasisPoints: 3500, taxBasisPoints: 700, contingencyBasisPoints: 500, labourRate: 550_000 };
const priceItem = { name: 'Pipe', kind: 'material', unit: 'ft', unitCost: 12_000, hoursPerUnit: 0.1, taxable: true, active: true };
const handOver = { asBuilt: [], pumpSerial: 'A-17', breaker: '14', deviations: '', customerName: 'Marisol Pruett', warrantyYears: 2 };

const libraryPump = (name: string): LibraryInput => ({
  name, source: 'Invented datasheet', priceCode: null,
  content: { kind: 'pump', solids: 0.0127, minSubmergence: 0.1, curve: [{ flow: 0, head: 8 }, { flow: 0.001, head: 6 }, { flow: 0.003, head: 2 }] },
});
const rainFile: Sample = () => ({
  body: { name: randomUUID() }, file: { bytes: Buffer.from('time,depth (mm)\n2020-06-01 14:00,12\n2020-06-01 15:00,3\n'), name: 'gauge.csv', mediaType: 'text/csv' },
});
const draftOf = async (world: World): Promise<{ jobId: string; revisionId: string }> => {
  const { jobId, id } = await world.revisable();
  return { jobId, revisionId: id };
};
const rainRecord = (world: World): Promise<string> => world.once('rain record', async () => {
  const { body } = await world.office.post('/api/v1/rain-records').set(key()).field('meta', JSON.stringify({ name: 'Gauge' }))
    .attach('file', Buffer.from('time,depth (mm)\n2020-06-01 14:00,12\n'), { filename: 'gauge.csv', contentType: 'text/csv' }).expect(201);
  return (body as { id: string }).id;
});
const study = async (world: World): Promise<{ jobId: string; studyId: string }> => {
  const { jobId, revisionId } = await draftOf(world);
  const { id } = await post<Study>(world.office, `/jobs/${jobId}/revisions/${revisionId}/studies/record`, { recordId: await rainRecord(world), reportedPerYear: null }, 202);
  return { jobId, studyId: id };
};

/** By endpoint id. An endpoint without a row fails the test. Public endpoints need none: nobody is refused there. */
export const samples: Readonly<Record<string, Sample>> = {
  'identity.me': nothing,
  'identity.updatePreferences': () => ({ body: { theme: 'dark' } }),
  'identity.members': nothing,
  'identity.invite': () => ({ body: { name: 'New Person', email: `${randomUUID()}@example.test`, roles: ['crew'] } }),
  'identity.updateMember': async ({ test, ours }) => ({ params: { memberId: (await makePerson(test, ours.id, ['crew'])).id }, body: { roles: ['estimator'] } }),
  'identity.customerLink': async (world) => ({ params: { jobId: (await world.plainJob()).id }, body: {} }),
  'identity.registerDevice': () => ({ body: { id: randomUUID(), name: 'Phone' } }),
  'identity.phones': () => ({}),
  'identity.cutOffPhone': async (world) => ({ params: { sessionId: await sessionApart(world) }, body: {} }),
  'identity.cutOffDevice': async (world) => ({ params: { deviceId: await device(world) }, body: {} }),
  'company.read': nothing,
  'company.update': async ({ ours }) => ({ ifMatch: version(await get(ours.owner.agent, '/company')), body: { responsibleName: 'Somebody Else' } }),
  'audit.list': ({ jobId }) => ({ query: { jobId } }),
  'audit.verify': nothing,
  'notices.stream': nothing,
  'evaluate.run': () => ({ body: { document: site } }),

  'jobs.list': nothing,
  'jobs.create': () => ({ body: newCall }),
  'jobs.read': ofJob,
  'jobs.update': async (world) => {
    const job = await world.job((await world.plainJob()).id);
    return { params: { jobId: job.id }, ifMatch: version(job), body: { title: 'Water in the den' } };
  },
  'jobs.assign': async (world) => ({ params: { jobId: (await world.plainJob()).id }, body: { assignments: [{ memberId: world.ours.crew.id, role: 'crew' }] } }),
  'jobs.moveStage': async (world) => ({ params: { jobId: (await world.jobInIntake()).id }, body: { stage: 'visit', reason: '' } }),
  'jobs.releaseCheck': ({ jobId, released }) => ({ params: { jobId }, query: { offerId: released.offer.id } }),
  'jobs.release': async (world) => {
    const { job, offer } = await world.accepted();
    await noPermitNeeded(world.office, job.id);
    return { params: { jobId: job.id }, body: { offerId: offer.id } };
  },
  'jobs.referralLetter': async (world) => ({ params: { jobId: (await world.referredJob()).id } }),

  'surveys.list': ofJob,
  'surveys.create': ({ jobId }) => ({ params: { jobId }, body: { name: 'Visit', content: ternHollowSurvey } }),
  'surveys.read': async (world) => ({ params: { jobId: world.jobId, surveyId: (await survey(world)).id } }),
  'surveys.replace': async (world) => {
    const { id } = await survey(world);
    const latest = await get<Survey>(world.office, `/jobs/${world.jobId}/surveys/${id}`);
    return { params: { jobId: world.jobId, surveyId: id }, ifMatch: version(latest), body: { name: 'Corrected', content: ternHollowSurvey } };
  },
  'surveyFacts.list': ofJob,
  'surveyFacts.record': async (world, role) => ({ params: { jobId: world.jobId }, body: { facts: [begun(world.jobId, (await world.phone(role)).id)] } }),
  'rain.list': ofJob,
  'rain.upload': ({ jobId }) => ({
    params: { jobId }, body: { name: randomUUID() },
    file: { bytes: readFileSync(path.join(inRoot('packages', 'calc', 'fixtures', 'rain'), 'pulaskiDepthInches.csv')), name: 'point.csv', mediaType: 'text/csv' },
  }),
  'rain.type': ({ jobId }) => ({ params: { jobId }, body: { name: randomUUID(), table: site.rain.table } }),
  'rain.storm': async (world) => ({ params: { jobId: world.jobId, tableId: (await rainTable(world)).id }, query: { returnPeriod: '10' } }),

  'library.list': nothing, 'library.add': () => ({ body: libraryPump(randomUUID()) }),
  'library.change': async ({ office }) => {
    const entry = await post<LibraryEntry>(office, '/library', libraryPump(randomUUID()), 201);
    return { params: { entryId: entry.id }, ifMatch: version(entry), body: { ...libraryPump(randomUUID()), active: true } };
  },
  'library.import': () => ({ body: { entries: [libraryPump(randomUUID())] } }),

  'studies.records': nothing,
  'studies.uploadRecord': rainFile,
  'studies.list': async (world) => ({ params: await draftOf(world) }),
  'studies.options': async (world) => {
    const entry = await post<LibraryEntry>(world.office, '/library', libraryPump(randomUUID()), 201);
    return { params: await draftOf(world), body: { picks: [{ part: 'M1', entries: [entry.id] }], diversions: [] } };
  },
  'studies.record': async (world) => ({ params: await draftOf(world), body: { recordId: await rainRecord(world), reportedPerYear: null } }),
  'studies.read': async (world) => ({ params: await study(world) }),
  'studies.stop': async (world) => ({ params: await study(world), body: {} }),

  'designs.list': ofJob,
  'designs.create': async (world) => ({ params: { jobId: (await world.plainJob()).id }, body: { name: randomUUID(), document: site, fromRevisionId: null } }),
  'designs.revise': (world) => world.revisable().then(({ jobId, designId, id }) => ({ params: { jobId, designId }, body: { fromRevisionId: id } })),
  'designs.read': ({ jobId, released }) => ({ params: { jobId, revisionId: released.revision.id } }),
  'designs.operate': async (world) => {
    const { jobId, id, version: base } = await world.draft();
    return { params: { jobId, revisionId: id }, body: { base, operations: [{ kind: 'replace', path: ['rain', 'allowance'], value: 0.1 }] } };
  },
  'designs.history': ({ jobId, released }) => ({ params: { jobId, revisionId: released.revision.id } }),
  'designs.moment': ({ jobId, released }) => ({ params: { jobId, revisionId: released.revision.id, seq: '0' } }),
  'designs.print': ({ jobId, released }) => ({ params: { jobId, revisionId: released.revision.id }, query: { sheet: 'section' } }),
  'designs.presence': (world) => world.draft().then(({ jobId, id }) => ({ params: { jobId, revisionId: id }, body: { part: 'CH1', here: true } })),
  'designs.acknowledge': async (world) => {
    const { jobId, id, evaluation } = await world.draft();
    const caution = evaluation?.findings.find(({ severity }) => severity === 'caution');
    if (caution === undefined) throw new Error('the draft has no caution');
    return { params: { jobId, revisionId: id }, body: { code: caution.code, at: caution.at, note: 'seen' } };
  },
  'designs.issue': async (world) => {
    const revision = await world.issuable();
    return { params: { jobId: revision.jobId, revisionId: revision.id }, ifMatch: version(revision), body: {} };
  },

  'prices.items': nothing,
  'prices.saveItem': () => ({ params: { code: 'pipe' }, body: priceItem }),
  'prices.list': ofJob,
  'prices.create': async (world) => {
    const { revision } = await world.priced();
    return { params: { jobId: revision.jobId }, body: { revisionId: revision.id } };
  },
  'prices.replace': async (world) => {
    const sheet = await world.sheet('replace');
    const lines = [{ code: 'x', name: 'Pipe', kind: 'material', unit: 'ft', quantity: 1.5, unitCost: 12_000, taxable: true, origin: 'allowance', reason: 'by eye' }];
    return { params: { jobId: sheet.jobId, sheetId: sheet.id }, ifMatch: version(sheet), body: { ...rates, lines } };
  },
  'offers.list': ofJob,
  'offers.create': async (world) => {
    const sheet = await world.sheet('offer');
    return { params: { jobId: sheet.jobId }, body: { sheetId: sheet.id, validUntil: '2026-04-01', message: 'As we said' } };
  },
  'offers.send': async (world) => {
    const { id, jobId } = await world.offerAs('draft');
    return { params: { jobId, offerId: id }, body: {} };
  },
  'offers.withdraw': async (world) => {
    const { id, jobId } = await world.offerAs('sent');
    return { params: { jobId, offerId: id }, body: {} };
  },
  'portal.read': nothing,
  'portal.offerBytes': ({ released }) => ({ params: { offerId: released.offer.id } }),
  'portal.accept': async (world) => {
    const { offer, customer } = await world.asked();
    return { customer, params: { offerId: offer.id }, body: { name: 'Marisol Pruett', sha256: offer.sha256, electronicRecords: true } };
  },
  'portal.photo': async (world) => ({ params: { photoId: (await photo(world)).id } }),

  'photos.list': ofJob,
  'photos.add': async ({ jobId }) => ({ params: { jobId }, ...(await upload()) }),
  'photos.file': async (world) => ({ params: { jobId: world.jobId, photoId: (await photo(world)).id, copy: 'view' } }),
  ...uploadSamples,
  ...fieldSamples,
  'checklists.read': ofJob,
  'checklists.asBuilt': ofJob,
  'checklists.record': async (world, role) => {
    const phone = await world.phone(role);
    return { params: { jobId: world.jobId }, body: { facts: [phone.fact(await phone.item('B7'), { kind: 'ticked', note: 'plywood down' })] } };
  },
  'checklists.begin': ({ jobId }) => ({ params: { jobId, itemKey: 'B7' }, body: {} }),
  'checklists.waive': ({ jobId }) => ({ params: { jobId, itemKey: 'J4' }, body: { reason: 'agreed with the customer' } }),
  ...locateSamples,
  'proof.list': ofJob,
  'proof.record': async (world) => {
    await world.once('electrician', async () => (await world.phone('crew')).prove('H1'));
    return { params: { jobId: world.jobId }, body: pumpDown() };
  },
  'handover.read': ofJob,
  'handover.complete': async (world) => ({ params: { jobId: (await world.handoverReady()).id }, body: handOver }),
};

/** Ends its own session, so it is tried apart from the matrix. */
export const apart: readonly string[] = ['identity.signOut'];
