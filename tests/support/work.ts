import { createHash, randomUUID } from 'node:crypto';
import { ownLineOf, type Checklist, type ChecklistItem, type FieldFact, type LocateTicket, type Photo, type StoredFact, type TicketEventKind } from '@yardfall/contracts';
import sharp from 'sharp';
import { key, type Person } from './actors.ts';
import type { TestApp } from './app.ts';
import { get, post, type Agent } from './builders.ts';

type Body = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;

/** A real picture that no other equals. */
export async function picture(width = 640, height = 480, format: 'jpeg' | 'png' = 'jpeg'): Promise<Buffer> {
  const [r, g, b] = createHash('sha256').update(randomUUID()).digest();
  return sharp({ create: { width, height, channels: 3, background: { r: r ?? 0, g: g ?? 0, b: b ?? 0 } } })[format]().toBuffer();
}

export function sha256(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('hex');
}

export function sendPhoto(agent: Agent, jobId: string, bytes: Buffer, meta: object = {}, mediaType = 'image/jpeg') {
  const whole = { id: randomUUID(), sha256: sha256(bytes), takenAt: '2026-03-02T14:00:00Z', itemKey: null, part: null, note: '', forCustomer: false, ...meta };
  return agent.post(`/api/v1/jobs/${jobId}/photos`).set(key()).field('meta', JSON.stringify(whole)).attach('file', bytes, { filename: 'photo', contentType: mediaType });
}

/** A phone of one person on one job: its own sequence, its own outbox. */
export class Phone {
  readonly id = randomUUID();
  private seq = 0;
  private bytes: Buffer | undefined;
  private readonly test: TestApp;
  private readonly person: Person;
  private readonly jobId: string;

  private constructor(test: TestApp, person: Person, jobId: string) {
    this.test = test;
    this.person = person;
    this.jobId = jobId;
  }

  static async of(test: TestApp, person: Person, jobId: string): Promise<Phone> {
    const phone = new Phone(test, person, jobId);
    await post(person.agent, '/devices', { id: phone.id, name: 'phone' }, 201);
    return phone;
  }

  checklist(): Promise<Checklist> {
    return get<Checklist>(this.person.agent, `/jobs/${this.jobId}/checklist`);
  }

  async item(itemKey: string): Promise<ChecklistItem> {
    const item = (await this.checklist()).items.find((one) => one.key === itemKey);
    if (item === undefined) throw new Error(`the checklist has no ${itemKey}`);
    return item;
  }

  fact(item: ChecklistItem, body: Body, changes: Partial<FieldFact> = {}): FieldFact {
    this.seq += 1;
    // No two things are recorded in the same moment.
    this.test.clock.forward(1);
    return {
      id: randomUUID(), deviceId: this.id, seq: this.seq, deviceTime: this.test.clock.now().toISOString(), factVersion: 1, revisionId: randomUUID(), itemKey: item.key,
      requirementHash: item.requirementHash, seen: item.facts.map(({ fact }) => fact.id), ...body, ...changes,
    } as FieldFact;
  }

  send(facts: readonly FieldFact[]): Promise<{ facts: StoredFact[]; checklist: Checklist }> {
    return post(this.person.agent, `/jobs/${this.jobId}/facts`, { facts }, 200);
  }

  async photo(item: ChecklistItem): Promise<FieldFact> {
    const takenAt = this.test.clock.now().toISOString();
    // One picture is enough for a whole yard: each upload is a photo of its own.
    this.bytes ??= await picture(64, 48);
    const photo = (await sendPhoto(this.person.agent, this.jobId, this.bytes, { itemKey: item.key, takenAt }).expect(201)).body as Photo;
    return this.fact(item, { kind: 'photo', photoId: photo.id, takenAt });
  }

  /** Everything that the item asks for, except the kinds named. */
  async prove(itemKey: string, without: readonly FieldFact['kind'][] = []): Promise<StoredFact[]> {
    const wanted = (await this.all(itemKey)).filter(({ kind }) => !without.includes(kind));
    return wanted.length === 0 ? [] : (await this.send(wanted)).facts;
  }

  async doNotApply(itemKeys: readonly string[]): Promise<void> {
    const { items } = await this.checklist();
    const facts = items.filter((item) => itemKeys.includes(item.key)).map((item) => this.fact(item, { kind: 'notApplicable', reason: 'There is none of it in this yard' }));
    if (facts.length > 0) await this.send(facts);
  }

  /** Everything that the item asks for, as facts that are still on the phone; their photos are sent. */
  async all(itemKey: string): Promise<FieldFact[]> {
    const item = await this.item(itemKey);
    const { tickFrom } = item.requirement;
    if (tickFrom !== undefined && this.test.clock.now().getTime() < Date.parse(tickFrom)) return [this.fact(item, { kind: 'notApplicable', reason: 'Waived by hand because of an emergency' })];
    const facts: FieldFact[] = [];
    // Who signs signs what stands there by then.
    const order = item.requirement.evidence.toSorted((a, b) => Number(a === 'signature') - Number(b === 'signature'));
    for (const evidence of order) facts.push(...(await this.evidence(item, evidence, facts.map(({ id }) => id))));
    return facts;
  }

  private async evidence(item: ChecklistItem, evidence: ChecklistItem['requirement']['evidence'][number], before: readonly string[]): Promise<FieldFact[]> {
    const { requirement } = item;
    switch (evidence) {
      case 'tick': return [this.fact(item, { kind: 'ticked', note: '' })];
      case 'photo': return Promise.all(Array.from({ length: requirement.minPhotos }, () => this.photo(item)));
      case 'value': return requirement.measures.map(({ name, target }) => this.fact(item, { kind: 'measured', name, value: target }));
      case 'document': return requirement.template === 'J1' ? [] : [this.fact(item, { kind: 'document', reference: 'on paper', validOn: null })];
      case 'text': return (requirement.texts ?? []).map((name) => this.fact(item, { kind: 'written', name, text: ownLineOf(name) === null ? 'A-17' : 'no' }));
      case 'signature': return requirement.signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner')
        .map((signer) => this.fact(item, { kind: 'signed', signer, name: 'A. Signer', licence: '', statement: '' }, { seen: [...item.facts.map(({ fact }) => fact.id), ...before] }));
    }
  }
}

/** A ticket of NC that is legal on 2 March 2026, with every answer. */
export async function mayDig(agent: Agent, jobId: string): Promise<LocateTicket> {
  const body = { number: randomUUID().slice(0, 8), requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas', 'Power'] };
  const ticket = await post<LocateTicket>(agent, `/jobs/${jobId}/locate-tickets`, body, 201);
  await post(agent, `/jobs/${jobId}/locate-tickets/${ticket.id}/responses`, { utility: 'Gas', answer: 'marked', note: '' }, 200);
  await post(agent, `/jobs/${jobId}/locate-tickets/${ticket.id}/responses`, { utility: 'Power', answer: 'clear', note: '' }, 200);
  return ticketEvent(agent, ticket, 'marksAgree');
}

export function ticketEvent(agent: Agent, { jobId, id }: Pick<LocateTicket, 'jobId' | 'id'>, kind: TicketEventKind, at = '2026-03-02T15:00:00Z', more: object = {}): Promise<LocateTicket> {
  return post<LocateTicket>(agent, `/jobs/${jobId}/locate-tickets/${id}/events`, { kind, utility: '', hazard: false, note: '', photoId: null, at, ...more }, 200);
}
