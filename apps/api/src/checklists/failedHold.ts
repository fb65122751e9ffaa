import { holdPointText } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { clearHolds, setHold } from '../jobs/holds.ts';
import type { LiveChecklist, LiveItem } from './live.ts';

const code = 'jobs.hold.failed';
const isFailed = (state: string): boolean => state === 'failed' || state === 'disputed';

/** The office is told of a hold point whose proof failed, or of which two phones disagree, until it is put right. */
export async function holdForFailed(tx: Tx, actor: Actor, live: LiveChecklist, keys: ReadonlySet<string>): Promise<void> {
  const changed = [...keys].flatMap((key) => live.items.get(key) ?? []).find((item) => item.row.holdPoint !== null && isFailed(item.row.state) !== isFailed(live.fold(item).state));
  if (changed === undefined) return;
  const failed = [...live.items.values()].filter((item) => item.row.holdPoint !== null && isFailed(live.fold(item).state));
  const [first] = failed;
  const { jobId } = changed.row;
  if (first === undefined) await clearHolds(tx, actor, jobId, [code]);
  else await setHold(tx, actor, jobId, { waitsFor: 'crew', code, params: { point: pointOf(first), count: failed.length } });
}

/** In words, because the list itself has them for whoever reads the board. */
function pointOf({ row }: LiveItem): string {
  return holdPointText(row.holdPoint ?? '');
}
