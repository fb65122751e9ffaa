import { createHash } from 'node:crypto';
import { canonicalBytes, EnteredLocateRule, enteredRule, type LocateRule, locateRules } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import type { Prisma } from '../generated/prisma/client.ts';

const signer = { signedBy: { select: { name: true } } } satisfies Prisma.LocateRuleInclude;
export type SignedRule = Prisma.LocateRuleGetPayload<{ include: typeof signer }>;

/** In the order in which they were signed. */
export function signedRules(tx: Tx, actor: Actor): Promise<SignedRule[]> {
  return tx.locateRule.findMany({ where: { companyId: actor.companyId }, include: signer, orderBy: [{ signedAt: 'asc' }, { id: 'asc' }] });
}

export function contentOf({ rule }: Pick<SignedRule, 'rule'>): EnteredLocateRule {
  return EnteredLocateRule.parse(JSON.parse(Buffer.from(rule).toString('utf8')));
}

export function storedRule(rule: EnteredLocateRule): { readonly rule: Uint8Array<ArrayBuffer>; readonly sha256: string } {
  const bytes = canonicalBytes(rule);
  return { rule: bytes, sha256: createHash('sha256').update(bytes).digest('hex') };
}

/** The built-in rule sets and after them the signed ones, so that the last of a state is the one in force. */
export function allRules(signed: readonly SignedRule[]): readonly LocateRule[] {
  return [...locateRules, ...signed.map((row) => enteredRule(contentOf(row), row.id))];
}
