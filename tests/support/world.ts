import type { Handover, Job, MemberRole, Offer, PriceSheet, Revision, Role } from '@yardfall/contracts';
import { makeCompany, type Person, type TestCompany } from './actors.ts';
import { startApp, type TestApp } from './app.ts';
import { acceptedOffer, acknowledgeAll, draftRevision, get, newJob, openLink, post, pricedRevision, releasedJob, sentOffer, type WithOffer } from './builders.ts';
import { openSending } from './sender.ts';
import { mayDig, Phone } from './work.ts';

/**
 * Two companies; ours has a job that is released to dig, with its crew and its customer. What a call uses up (an offer is accepted once)
 * is made again only when it was used up, because each of these takes evaluations.
 */
export class World {
  readonly test: TestApp;
  readonly ours: TestCompany;
  readonly theirs: TestCompany;
  /** Released, with everybody on it. */
  readonly released: WithOffer;
  readonly agents: Readonly<Record<Role, Person['agent']>>;
  private readonly kept = new Map<string, unknown>();

  private constructor(parts: { test: TestApp; ours: TestCompany; theirs: TestCompany; released: WithOffer; sender: Person['agent'] }) {
    this.test = parts.test;
    this.ours = parts.ours;
    this.theirs = parts.theirs;
    this.released = parts.released;
    const { owner, estimator, crew } = this.ours;
    this.agents = { owner: owner.agent, estimator: estimator.agent, crew: crew.agent, customer: this.released.customer, sender: parts.sender };
  }

  static async build(): Promise<World> {
    const test = await startApp();
    const ours = await makeCompany(test, 'Our Yards');
    const theirs = await makeCompany(test, 'Their Yards');
    const released = await releasedJob(test, ours);
    await mayDig(ours.crew.agent, released.job.id);
    const sender = await openSending(test, ours, released.job.id);
    return new World({ test, ours, theirs, released, sender });
  }

  get jobId(): string {
    return this.released.job.id;
  }

  get office(): Person['agent'] {
    return this.ours.estimator.agent;
  }

  /** The phone of one person on the released job. */
  phone(role: MemberRole): Promise<Phone> {
    return this.once(`phone of ${role}`, () => Phone.of(this.test, this.ours[role], this.jobId));
  }

  /** Made once. */
  once<T>(name: string, make: () => Promise<T>): Promise<T> {
    return this.fresh(name, make, () => Promise.resolve(true));
  }

  /** Made again when a call has used it up. */
  async fresh<T>(name: string, make: () => Promise<T>, isUnused: (thing: T) => Promise<boolean>): Promise<T> {
    const known = this.kept.get(name) as T | undefined;
    if (known !== undefined && (await isUnused(known))) return known;
    const made = await make();
    this.kept.set(name, made);
    return made;
  }

  /** Released, and without a draft that somebody works at. */
  async jobApart(): Promise<string> {
    return (await this.once('job apart', () => releasedJob(this.test, this.ours))).job.id;
  }

  plainJob(): Promise<Job> {
    return this.once('plain job', () => newJob(this.ours));
  }

  jobInIntake(): Promise<Job> {
    return this.fresh('job in intake', () => newJob(this.ours), async ({ id }) => (await this.job(id)).stage === 'intake');
  }

  referredJob(): Promise<Job> {
    return this.once('referred job', async () => {
      const { id } = await newJob(this.ours);
      const assignments = [{ memberId: this.ours.crew.id, role: 'crew' }];
      await this.ours.owner.agent.put(`/api/v1/jobs/${id}/assignments`).send({ assignments }).expect(200);
      return post<Job>(this.office, `/jobs/${id}/stage`, { stage: 'referred', reason: 'leaning wall' }, 200);
    });
  }

  job(id: string): Promise<Job> {
    return get<Job>(this.ours.owner.agent, `/jobs/${id}`);
  }

  revision({ jobId, id }: { jobId: string; id: string }): Promise<Revision> {
    return get<Revision>(this.office, `/jobs/${jobId}/revisions/${id}`);
  }

  /** For edits and cautions: it stays a draft. */
  async draft(): Promise<Revision> {
    const { revision } = await this.once('draft', () => draftRevision(this.ours));
    return this.revision(revision);
  }

  async issuable(): Promise<Revision> {
    const make = async (): Promise<Revision> => acknowledgeAll(this.office, (await draftRevision(this.ours)).revision);
    const revision = await this.fresh('issuable', make, async (known) => (await this.revision(known)).status === 'draft');
    return this.revision(revision);
  }

  /** An issued variant without an open draft. */
  async revisable(): Promise<Revision> {
    const { jobId, designId, id } = this.released.revision;
    const designs = await get<{ items: { id: string; revisions: { status: string }[] }[] }>(this.office, `/jobs/${jobId}/designs`);
    const open = designs.items.find((design) => design.id === designId)?.revisions.some(({ status }) => status === 'draft') ?? true;
    if (!open) return this.released.revision;
    const other = await this.fresh('revisable', async () => (await pricedRevision(this.test, this.ours)).revision, async (known) => {
      const { items } = await get<typeof designs>(this.office, `/jobs/${known.jobId}/designs`);
      return items.every(({ revisions }) => revisions.every(({ status }) => status !== 'draft'));
    });
    return other.id === id ? this.released.revision : other;
  }

  priced(): Promise<{ revision: Revision; sheet: PriceSheet }> {
    return this.once('priced', () => pricedRevision(this.test, this.ours));
  }

  /** Not yet frozen by an offer; one for each purpose, because its lines may be replaced. */
  async sheet(purpose: 'offer' | 'replace'): Promise<PriceSheet> {
    const { revision } = await this.priced();
    const url = `/jobs/${revision.jobId}/price-sheets`;
    const read = async (id: string): Promise<PriceSheet | undefined> => (await get<{ items: PriceSheet[] }>(this.office, url)).items.find((sheet) => sheet.id === id);
    const known = await this.fresh(`sheet to ${purpose}`, () => post<PriceSheet>(this.office, url, { revisionId: revision.id }, 201), async ({ id }) => (await read(id))?.status === 'draft');
    return (await read(known.id)) ?? known;
  }

  offerAs(status: 'draft' | 'sent'): Promise<Offer> {
    const make = async (): Promise<Offer> => {
      const { id, jobId } = await this.sheet('offer');
      const draft = await post<Offer>(this.office, `/jobs/${jobId}/offers`, { sheetId: id, validUntil: '2026-04-01', message: '' }, 201);
      return status === 'draft' ? draft : (await post<{ offer: Offer }>(this.office, `/jobs/${jobId}/offers/${draft.id}/send`, {}, 200)).offer;
    };
    return this.fresh(`${status} offer`, make, async ({ id, jobId }) =>
      (await get<{ items: Offer[] }>(this.office, `/jobs/${jobId}/offers`)).items.some((offer) => offer.id === id && offer.status === status));
  }

  /** A customer whose offer is open. */
  asked(): Promise<WithOffer> {
    return this.fresh('asked', () => sentOffer(this.test, this.ours), async ({ job }) => (await this.job(job.id)).stage === 'offered');
  }

  accepted(): Promise<WithOffer> {
    return this.fresh('accepted', () => acceptedOffer(this.test, this.ours), async ({ job }) => (await this.job(job.id)).releasedAt === null);
  }

  /** Nothing is open before the handover: the owner waived what may be, looked at the trench, and said that the other steps do not apply. */
  handoverReady(): Promise<Job> {
    const make = async (): Promise<Job> => {
      const { job } = await releasedJob(this.test, this.ours);
      const { agent } = this.ours.owner;
      // What the ticket marks brings steps of its own.
      await mayDig(agent, job.id);
      const state = await get<{ open: { code: string; params: Record<string, string> }[] }>(agent, `/jobs/${job.id}/handover`);
      const open = (kind: string) => state.open.flatMap(({ code, params }) => (code === `handover.open.${kind}` && params['item'] !== undefined ? [params['item']] : []));
      const phone = await Phone.of(this.test, this.ours.owner, job.id);
      // Nobody waives the look at the trench.
      for (const item of open('item').filter((key) => key !== 'C5')) await post(agent, `/jobs/${job.id}/checklist/${encodeURIComponent(item)}/waive`, { reason: 'agreed with the customer' }, 200);
      await phone.prove('C5');
      await phone.doNotApply(open('step'));
      return job;
    };
    return this.fresh('handover ready', make, async ({ id }) => (await get<{ handover: Handover | null }>(this.ours.owner.agent, `/jobs/${id}/handover`)).handover === null);
  }

  customerBy(link: string): Promise<Person['agent']> {
    return openLink(this.test, link);
  }
}

