import type { INestApplicationContext } from '@nestjs/common';
import { memberActor } from '../common/actor.ts';
import { audit } from '../common/audit.ts';
import { Clock } from '../common/clock.ts';
import { Database } from '../common/database.ts';
import { Owner } from '../common/owner.ts';
import { LinksService } from '../identity/links.service.ts';
import { PriceListService } from '../prices/price-list.service.ts';
import { act, type Cast, demoPassword, gatherCast, people } from './cast.ts';
import { tellRidgeback, tellSallowBend } from './others.ts';
import { priceList } from './priceList.ts';
import { tellTernHollow } from './ternHollow.ts';
import { tellWickerRoad } from './wickerRoad.ts';

export interface SignIn {
  readonly role: string;
  readonly email?: string;
  readonly password?: string;
  readonly link?: string;
}

const told = 'demo.told';
const daysOfStory = 37;

/**
 * Loads the demo company into an installation without any, through the services that people use, and says how to sign in.
 * Nobody is served before it is whole: a start that was killed on the way begins again from nothing.
 * Null when the installation belongs to somebody else.
 */
export async function loadDemo(app: INestApplicationContext): Promise<SignIn[] | null> {
  const now = app.get(Clock).now();
  await clearHalfTold(app);
  if (await isEmpty(app)) {
    const cast = await gatherCast(app, now, daysOfStory);
    await tellAll(cast);
  }
  return signInsOf(app, now);
}

/** Links are paths until the service knows where it listens. */
export function withAddress(signIns: readonly SignIn[], address: string): SignIn[] {
  return signIns.map((one) => (one.link === undefined ? one : { ...one, link: `${address}${one.link}` }));
}

async function tellAll(cast: Cast): Promise<void> {
  const { app } = cast;
  for (const { code, ...item } of priceList) await app.get(PriceListService).save(act(cast, 'owner', daysOfStory), code, item);
  const jobId = await tellTernHollow(cast);
  await tellSallowBend(cast);
  await tellRidgeback(cast);
  await tellWickerRoad(cast);
  const owner = memberActor(cast.members.owner, cast.now, 'demo');
  await app.get(Database).write(owner, (tx) => audit(tx, owner, told, { jobId }));
}

async function isEmpty(app: INestApplicationContext): Promise<boolean> {
  const { rowCount } = await app.get(Owner).pool.query('SELECT 1 FROM company LIMIT 1');
  return rowCount === 0;
}

/** Only ever the demo company, alone in its database, and only when its story was not told to the end. */
async function clearHalfTold(app: INestApplicationContext): Promise<void> {
  const { pool } = app.get(Owner);
  const { rows } = await pool.query<{ half: boolean }>(
    `SELECT count(*) = 1 AND bool_and(EXISTS (SELECT FROM member m WHERE m.company_id = c.id AND m.email = $1)
       AND NOT EXISTS (SELECT FROM audit_entry a WHERE a.company_id = c.id AND a.action = $2)) AS half FROM company c`, [people.owner.email, told]);
  if (rows[0]?.half === true) await pool.query('TRUNCATE company CASCADE');
}

async function signInsOf(app: INestApplicationContext, now: Date): Promise<SignIn[] | null> {
  const { rows } = await app.get(Owner).pool.query<{ id: string; company_id: string; job_id: string }>(
    'SELECT m.id, m.company_id, a.job_id FROM member m JOIN audit_entry a ON a.company_id = m.company_id AND a.action = $2 WHERE m.email = $1', [people.owner.email, told]);
  const [owner] = rows;
  if (owner === undefined) return null;
  const actor = memberActor({ id: owner.id, companyId: owner.company_id, roles: people.owner.roles }, now, 'demo');
  const { link } = await app.get(LinksService).customerLink(actor, owner.job_id);
  const members = Object.entries(people).map(([role, { email }]) => ({ role, email, password: demoPassword }));
  return [...members, { role: 'customer', link }];
}
