import type { Job, PriceLineInput, Revision } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import { JobsService } from '../jobs/jobs.service.ts';
import { LocatesService } from '../locates/locates.service.ts';
import { TicketLifeService } from '../locates/ticketLife.service.ts';
import { OffersService } from '../offers/offers.service.ts';
import { AcceptanceService } from '../portal/acceptance.service.ts';
import { SheetsService } from '../prices/sheets.service.ts';
import { act, type Cast } from './cast.ts';
import { withVersion } from './story.ts';

const utilities = ['Power', 'Gas', 'Communication', 'Water and reclaimed', 'Sewer'];
const validDays = 30;

export interface Sale {
  readonly allowances: readonly PriceLineInput[];
  readonly message: string;
  readonly acceptedBy: string;
}

/** Priced on one day, sent the next, accepted the day after. Gives the id of the accepted offer. */
export async function sell(cast: Cast, { id: jobId }: Pick<Job, 'id'>, revision: Revision, { allowances, message, acceptedBy }: Sale, daysAgo: number): Promise<string> {
  const { app } = cast;
  const estimator = act(cast, 'estimator', daysAgo);
  const sheet = await app.get(SheetsService).create(estimator, jobId, { revisionId: revision.id });
  const lines = [...sheet.lines, ...allowances].map(({ code, name, kind, unit, quantity, unitCost, taxable, origin, reason }) => ({ code, name, kind, unit, quantity, unitCost, taxable, origin, reason }));
  const { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate } = sheet;
  await app.get(SheetsService).replace(withVersion(estimator, sheet.version), jobId, sheet.id, { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate, lines });
  const sender = act(cast, 'estimator', daysAgo - 1);
  const validUntil = new Date(sender.request.at.getTime() + validDays * 86_400_000).toISOString().slice(0, 10);
  const offer = await app.get(OffersService).create(sender, jobId, { sheetId: sheet.id, validUntil, message });
  const { offer: sent } = await app.get(OffersService).send(sender, jobId, offer.id);
  const job = await app.get(JobsService).read(sender, jobId);
  await app.get(AcceptanceService).accept(customerOf(cast, job, daysAgo - 2), sent.id, { name: acceptedBy, sha256: sent.sha256, electronicRecords: true });
  return sent.id;
}

function customerOf(cast: Cast, job: Job, daysAgo: number): Actor {
  return { ...act(cast, 'owner', daysAgo, 22), kind: 'customer', id: job.customer.id, roles: ['customer'], jobId: job.id };
}

/** Asks for marks; six days later every utility has answered, and the marks were walked. */
export async function askForMarks(cast: Cast, jobId: string, { number, area, clear = ['Gas', 'Sewer'] }: { readonly number: string; readonly area: string; readonly clear?: readonly string[] }, daysAgo: number): Promise<void> {
  const locates = cast.app.get(LocatesService);
  const life = cast.app.get(TicketLifeService);
  const requester = act(cast, 'owner', daysAgo);
  const ticket = await locates.create(requester, jobId, { number, requestedAt: requester.request.at.toISOString(), area, utilities });
  for (const [index, utility] of utilities.entries()) {
    const answer = clear.includes(utility) ? 'clear' : 'marked';
    await life.answer(act(cast, 'owner', daysAgo - 6, 13 + index), jobId, ticket.id, { utility, answer, note: '' });
  }
  const walker = act(cast, 'owner', daysAgo - 6, 13 + utilities.length);
  await life.event(walker, jobId, ticket.id, { kind: 'marksAgree', utility: '', hazard: false, note: 'Walked with the paint on the ground.', photoId: null, at: walker.request.at.toISOString() });
}
