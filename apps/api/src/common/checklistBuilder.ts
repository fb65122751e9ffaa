import type { Actor } from './actor.ts';
import type { Tx } from './database.ts';

/**
 * Makes the checklist of a job anew from its build revision, in the transaction that set it.
 * Stands here because a release (jobs) starts it and the checklist (which knows jobs) does it.
 */
export abstract class ChecklistBuilder {
  abstract rebuildFor(tx: Tx, actor: Actor, jobId: string): Promise<void>;

  /** A ticket or the homeowner says where lines are: those that the design does not draw become steps of their own. */
  abstract linesChanged(tx: Tx, actor: Actor, jobId: string): Promise<void>;
}
