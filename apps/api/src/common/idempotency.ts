import { createCipheriv, createDecipheriv, createHash, hkdfSync, randomBytes } from 'node:crypto';
import type { Actor, IdempotencyClaim } from './actor.ts';
import type { Tx } from './database.ts';
import { DomainError } from './errors.ts';
import { newId } from './ids.ts';
import { sqlStateOf } from './sqlState.ts';
import { shape } from './shape.ts';

export interface EarlierAnswer {
  readonly body: unknown;
}

/** Only its hash is stored: whoever reads the table cannot repeat a request, nor open the answer kept for it. */
function hashOf(key: string): string {
  return createHash('sha256').update(key).digest('hex');
}

/** The answer of a request that was done before, or null. */
export async function findAnswer(tx: Tx, actor: Actor, claim: IdempotencyClaim): Promise<EarlierAnswer | null> {
  const row = await tx.idempotencyKey.findUnique({
    where: { companyId_actorId_key: { companyId: actor.companyId, actorId: actor.id, key: hashOf(claim.key) } },
  });
  if (row === null) return null;
  if (row.bodySha256 !== claim.bodySha256 || row.route !== routeOf(actor)) throw new DomainError('idempotency.mismatch');
  if (row.response === null) throw new Error('a committed idempotency key has no answer');
  return { body: open(row.response, claim.key) };
}

/** Claims the key in the transaction of the effect. A request under way with the same key is waited for. */
export async function claimKey(tx: Tx, actor: Actor, claim: IdempotencyClaim): Promise<EarlierAnswer | null> {
  let inserted: number;
  try {
    inserted = await tx.$executeRaw`
      INSERT INTO idempotency_key (id, company_id, actor_id, key, route, body_sha256, created_at)
      VALUES (${newId()}::uuid, ${actor.companyId}::uuid, ${actor.id}::uuid, ${hashOf(claim.key)}, ${routeOf(actor)}, ${claim.bodySha256}, ${actor.request.at})
      ON CONFLICT (company_id, actor_id, key) DO NOTHING`;
  } catch (error) {
    if (sqlStateOf(error) === '55P03') throw new DomainError('idempotency.inFlight', {}, [], { cause: error });
    throw error;
  }
  return inserted === 1 ? null : findAnswer(tx, actor, claim);
}

export async function keepAnswer(tx: Tx, actor: Actor, claim: IdempotencyClaim, answer: unknown): Promise<void> {
  const { endpoint } = actor.request;
  if (endpoint === null) throw new Error('an idempotency key belongs to an endpoint');
  await tx.idempotencyKey.update({
    where: { companyId_actorId_key: { companyId: actor.companyId, actorId: actor.id, key: hashOf(claim.key) } },
    data: { status: endpoint.status, response: seal(shape(endpoint, answer), claim.key) },
  });
}

function routeOf(actor: Actor): string {
  const { endpoint } = actor.request;
  return endpoint === null ? '' : `${endpoint.method} ${endpoint.fullPath}`;
}

function sealingKey(key: string): Buffer {
  return Buffer.from(hkdfSync('sha256', key, '', 'kept answer', 32));
}

/** An answer may hold a link or a name, so it is kept under the key that only the caller has. */
function seal(answer: unknown, key: string): Uint8Array<ArrayBuffer> {
  const nonce = randomBytes(12);
  const cipher = createCipheriv('aes-256-gcm', sealingKey(key), nonce);
  const sealed = Buffer.concat([cipher.update(JSON.stringify({ answer }), 'utf8'), cipher.final()]);
  return new Uint8Array(Buffer.concat([nonce, cipher.getAuthTag(), sealed]));
}

function open(sealed: Uint8Array, key: string): unknown {
  const decipher = createDecipheriv('aes-256-gcm', sealingKey(key), sealed.subarray(0, 12));
  decipher.setAuthTag(sealed.subarray(12, 28));
  const json = Buffer.concat([decipher.update(sealed.subarray(28)), decipher.final()]).toString('utf8');
  return (JSON.parse(json) as { answer?: unknown }).answer;
}
