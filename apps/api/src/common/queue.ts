import type { Actor } from './actor.ts';
import type { Tx } from './database.ts';

/** Work for after the commit. The payload always names the company; a job key replaces a waiting job with the same key. */
export async function enqueue(tx: Tx, actor: Actor, task: string, payload: Readonly<Record<string, unknown>>, jobKey: string | null = null): Promise<void> {
  const json = JSON.stringify({ ...payload, companyId: actor.companyId });
  await tx.$executeRaw`SELECT enqueue(${task}, ${json}::json, ${jobKey})`;
}
