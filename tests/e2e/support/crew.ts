import { createHash, randomBytes, randomUUID } from 'node:crypto';
import { expect } from '@playwright/test';
import { ownLineOf, type Checklist, type ChecklistItem } from '@yardfall/contracts';
import sharp from 'sharp';
import { api, type Person } from './people.ts';

const settled = ['proven', 'waived', 'notApplicable'];

let scene: Promise<Buffer> | null = null;

/** A real JPEG that no other equals, sharp and large enough for a phone to have no doubt about it: one scene, each with a comment of its own (marker FFFE, ITU-T T.81). */
export async function jpeg(): Promise<Buffer> {
  scene ??= sharp(randomBytes(80 * 64 * 3), { raw: { width: 80, height: 64, channels: 3 } }).resize(800, 640, { kernel: 'nearest' }).jpeg({ quality: 60 }).toBuffer();
  const picture = await scene;
  return Buffer.concat([picture.subarray(0, 2), Buffer.from([0xff, 0xfe, 0x00, 0x12]), randomBytes(16), picture.subarray(2)]);
}

/** Goes through the list by the API as the person's own browser may call it: everything but what the test does by hand. */
export class ListWorker {
  private readonly person: Person;
  private readonly jobId: string;
  private readonly revisionId: string;
  private readonly deviceId = randomUUID();
  /** How far the clock of this phone is beside the machine's [ms]: for what was recorded the day before. */
  beside = 0;
  private seq = 0;

  private constructor(person: Person, jobId: string, revisionId: string) {
    this.person = person;
    this.jobId = jobId;
    this.revisionId = revisionId;
  }

  static async of(person: Person, jobId: string): Promise<ListWorker> {
    const { body } = await api<Checklist>(person, 'GET', `/jobs/${jobId}/checklist`);
    const worker = new ListWorker(person, jobId, body.revisionId);
    const { status } = await api(person, 'POST', '/devices', { id: worker.deviceId, name: 'test phone' });
    expect(status).toBe(201);
    return worker;
  }

  async items(): Promise<readonly ChecklistItem[]> {
    return (await api<Checklist>(this.person, 'GET', `/jobs/${this.jobId}/checklist`)).body.items;
  }

  async item(template: string): Promise<ChecklistItem> {
    const found = (await this.items()).find((item) => item.template === template);
    if (!found) throw new Error(`the list has no ${template}`);
    return found;
  }

  /** Proves what nothing holds, again and again, and says what stayed open. */
  async prove(wanted: (item: ChecklistItem) => boolean): Promise<string[]> {
    const open = async () => (await this.items()).filter((item) => wanted(item) && !settled.includes(item.state));
    for (let pass = 0; pass < 12; pass += 1) {
      const ready = (await open()).filter((item) => item.heldBy.length === 0 && item.missing.some((lack) => lack !== 'document' || item.template !== 'J1'));
      if (ready.length === 0) break;
      for (const item of ready) await this.proveItem(item);
    }
    return (await open()).map(({ key }) => key);
  }

  private async proveItem(item: ChecklistItem): Promise<void> {
    const seen = item.facts.map(({ fact }) => fact.id);
    const bodies = isTooEarly(item) ? [emergency] : [...(await this.photos(item)), ...evidenceOf(item)];
    const facts = bodies.map((body) => {
      const fact = this.fact(item, body, [...seen]);
      seen.push(fact.id);
      return fact;
    });
    if (facts.length === 0) return;
    const { status } = await api(this.person, 'POST', `/jobs/${this.jobId}/facts`, { facts });
    expect(status, item.key).toBe(200);
  }

  fact(item: ChecklistItem, body: object, seen: readonly string[]) {
    this.seq += 1;
    return {
      id: randomUUID(), deviceId: this.deviceId, seq: this.seq, deviceTime: this.now(), factVersion: 1, revisionId: this.revisionId, itemKey: item.key,
      requirementHash: item.requirementHash, seen, ...body,
    };
  }

  private now(): string {
    return new Date(Date.now() + this.beside).toISOString();
  }

  private async photos(item: ChecklistItem): Promise<object[]> {
    if (!item.requirement.evidence.includes('photo')) return [];
    return Promise.all(Array.from({ length: item.requirement.minPhotos }, async () => {
      const bytes = await jpeg();
      const takenAt = this.now();
      const meta = { id: randomUUID(), sha256: createHash('sha256').update(bytes).digest('hex'), takenAt, itemKey: item.key, part: item.part, note: '', forCustomer: false };
      const answer = await this.person.context.request.post(`/api/v1/jobs/${this.jobId}/photos`, {
        headers: { 'idempotency-key': randomUUID() }, multipart: { meta: JSON.stringify(meta), file: { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: bytes } },
      });
      expect(answer.status()).toBe(201);
      return { kind: 'photo', photoId: meta.id, takenAt };
    }));
  }
}

/** The customer gave up the time to cancel, as the law has it. */
const emergency = { kind: 'notApplicable', reason: 'Waived by hand because of an emergency; the paper is in the folder' };

function isTooEarly({ requirement: { tickFrom } }: ChecklistItem): boolean {
  return tickFrom !== undefined && Date.now() < Date.parse(tickFrom);
}

/** Measured as designed, signed by whoever has to, ticked last. */
function evidenceOf({ requirement, template, key }: ChecklistItem): object[] {
  const wants = new Set<string>(requirement.evidence);
  const signers = wants.has('signature') ? requirement.signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner') : [];
  return [
    ...(wants.has('value') ? requirement.measures.map(({ name, target }) => ({ kind: 'measured', name, value: target })) : []),
    ...(wants.has('document') && template !== 'J1' ? [{ kind: 'document', reference: `${key} on file`, validOn: null }] : []),
    ...(wants.has('text') ? (requirement.texts ?? []).map((name) => ({ kind: 'written', name, text: ownLineOf(name) === null ? 'A-17' : 'no' })) : []),
    ...signers.map((signer) => ({ kind: 'signed', signer, name: 'A. Signer', licence: 'L-1', statement: '' })),
    ...(wants.has('tick') ? [{ kind: 'ticked', note: '' }] : []),
  ];
}
