import { createHash, randomUUID } from 'node:crypto';
import { type Checklist, type ChecklistItem, type FieldFact, ownLineOf } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { ChecklistsService } from '../checklists/checklists.service.ts';
import { FactsService } from '../checklists/facts.service.ts';
import { DevicesService } from '../identity/devices.service.ts';
import { PhotosService } from '../photos/photos.service.ts';
import { act, type Cast, type Part, people } from './cast.ts';
import { drawScene } from './scene.ts';

type Body = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;

/** Items whose photos the customer is shown. */
const shown = new Set(['B1', 'D4', 'E1', 'F7', 'G5', 'J1', 'J4', 'J8']);
const settled = new Set<ChecklistItem['state']>(['proven', 'waived', 'notApplicable']);
const minutesPerItem = 3;
const mostPasses = 12;

/** Works through the checklist as the crew does: each item when nothing holds it any more, with everything that it asks for. */
export class Fieldwork {
  private readonly cast: Cast;
  private readonly jobId: string;
  /** The build revision that the facts speak of. */
  private readonly revisionId: string;
  private readonly daysAgo: number;
  private readonly devices: Record<'crew' | 'owner', { readonly id: string; seq: number }>;
  private minutes = 0;

  private constructor(cast: Cast, job: { id: string; buildRevisionId: string }, daysAgo: number) {
    this.cast = cast;
    this.jobId = job.id;
    this.revisionId = job.buildRevisionId;
    this.daysAgo = daysAgo;
    this.devices = { crew: { id: randomUUID(), seq: 0 }, owner: { id: randomUUID(), seq: 0 } };
  }

  static async begin(cast: Cast, job: { id: string; buildRevisionId: string }, daysAgo: number): Promise<Fieldwork> {
    const work = new Fieldwork(cast, job, daysAgo);
    await cast.app.get(DevicesService).register(work.actor('crew'), work.devices.crew.id, 'Crew phone');
    await cast.app.get(DevicesService).register(work.actor('owner'), work.devices.owner.id, 'Office phone');
    return work;
  }

  /** A moment of the working day; it moves on with each item. */
  actor(who: Part): Actor {
    return act(this.cast, who, this.daysAgo, 12, this.minutes);
  }

  /** Proves what can be proven of the items that are wanted; tells which stayed open. */
  async prove(wanted: (item: ChecklistItem) => boolean): Promise<string[]> {
    for (let pass = 0; pass < mostPasses; pass += 1) {
      const ready = (await this.open(wanted)).filter((item) => item.heldBy.length === 0 && item.missing.some((lack) => lack !== 'document' || item.template !== 'J1'));
      if (ready.length === 0) break;
      for (const item of ready) await this.proveItem(item);
    }
    return (await this.open(wanted)).map((item) => item.key);
  }

  private async open(wanted: (item: ChecklistItem) => boolean): Promise<ChecklistItem[]> {
    const { items }: Checklist = await this.cast.app.get(ChecklistsService).read(this.actor('owner'), this.jobId);
    return items.filter((item) => wanted(item) && !settled.has(item.state));
  }

  private async proveItem(item: ChecklistItem): Promise<void> {
    this.minutes += minutesPerItem;
    const byOwner = item.requirement.signers.includes('owner') && !item.requirement.signers.includes('crewLead');
    const who = byOwner ? 'owner' : 'crew';
    const bodies: Body[] = [...(await this.photosOf(item)), ...evidenceOf(item)];
    const seen = item.facts.map(({ fact }) => fact.id);
    const facts = bodies.map((body) => {
      const fact = { ...this.base(item, who, [...seen]), ...body } as FieldFact;
      seen.push(fact.id);
      return fact;
    });
    await this.cast.app.get(FactsService).record(this.actor(who), this.jobId, facts);
  }

  private base(item: ChecklistItem, who: 'crew' | 'owner', seen: string[]) {
    const device = this.devices[who];
    device.seq += 1;
    const { key, requirementHash } = item;
    const deviceTime = this.actor(who).request.at.toISOString();
    return { id: randomUUID(), deviceId: device.id, seq: device.seq, deviceTime, factVersion: 1 as const, revisionId: this.revisionId, itemKey: key, requirementHash, seen };
  }

  private async photosOf(item: ChecklistItem): Promise<Body[]> {
    if (!item.requirement.evidence.includes('photo')) return [];
    const bodies: Body[] = [];
    const actor = this.actor('crew');
    for (let count = 1; count <= item.requirement.minPhotos; count += 1) {
      const bytes = await drawScene(item.group, `${item.key} ${String(count)}`);
      const id = randomUUID();
      const takenAt = actor.request.at.toISOString();
      const meta = {
        id, sha256: createHash('sha256').update(bytes).digest('hex'), takenAt, itemKey: item.key, part: item.part, note: count === 1 && item.partName !== null ? item.partName : '',
        forCustomer: count === 1 && shown.has(item.template), marks: [],
      };
      await this.cast.app.get(PhotosService).add(actor, this.jobId, meta, { bytes, name: `${item.template}-${String(count)}.jpg`, mediaType: 'image/jpeg' });
      bodies.push({ kind: 'photo', photoId: id, takenAt });
    }
    return bodies;
  }
}

const signatures: Readonly<Record<string, { name: string; licence: string }>> = {
  homeowner: { name: 'Marisol Pruett', licence: '' },
  electrician: { name: 'Dana Okoro', licence: 'EL-20417' },
  inspector: { name: 'Lee Whitfield', licence: 'B-118' },
};

const plates: Readonly<Record<string, string>> = {
  pumpModel: 'SP-50', pumpSerial: 'A-1774', steel: 'Light mesh', competentPerson: 'Rosa Delgado', tieFromOne: 'Corner of the house by the back door', tieFromTwo: 'Other back corner of the house',
};

const foot = 0.3048;

/** Measured as designed; the tapes to what is buried read what they read, each part further along the house [m]. */
function readings({ measures }: ChecklistItem['requirement']): Body[] {
  const tied = [...new Set(measures.flatMap(({ name }) => (name.startsWith('tie') ? [name.split(':')[1]] : [])))];
  return measures.map(({ name, target }): Body => {
    const [what, part] = name.split(':');
    const at = tied.indexOf(part);
    const tape = what === 'tieOne' ? 11.3 + 9.4 * at : 52.6 - 5.7 * at;
    return { kind: 'measured', name, value: what === 'tieOne' || what === 'tieTwo' ? Math.round(tape * 10) * 0.1 * foot : target };
  });
}

/** Signed by whoever has to, ticked last. */
function evidenceOf({ requirement, template, key }: ChecklistItem): Body[] {
  const wants = new Set(requirement.evidence);
  const signers = wants.has('signature') ? requirement.signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner') : [];
  return [
    ...(wants.has('value') ? readings(requirement) : []),
    ...(wants.has('document') && template !== 'J1' ? [{ kind: 'document' as const, reference: `${key} on file`, validOn: null }] : []),
    ...(wants.has('text') ? (requirement.texts ?? []).map((name): Body => ({ kind: 'written', name, text: plates[name] ?? (ownLineOf(name) === null ? 'as on the plate' : 'no') })) : []),
    ...signers.map((signer): Body => ({ kind: 'signed', signer, ...(signatures[signer] ?? { name: people.owner.name, licence: '' }), statement: '' })),
    ...(wants.has('tick') ? [{ kind: 'ticked' as const, note: '' }] : []),
  ];
}
