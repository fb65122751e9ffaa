import { type FoundReport, type FoundSaid, isHit, withAdded } from '@yardfall/contracts';
import { madeAt } from './madeAt.ts';
import type { OutboxEntry, OutboxFound, OutboxFoundMore } from './outbox.ts';

/** What stopped work on a job and nobody has answered. */
export interface StopNow extends FoundSaid {
  readonly id: string;
  /** When the work stopped. */
  readonly at: string;
  /** When a line was hit; null while none was. */
  readonly hitAt: string | null;
  /** Whether the office knows that the work is stopped. */
  readonly inOffice: boolean;
  /** Things told of it that are on this phone only. */
  readonly waiting: number;
  readonly mine: boolean;
}

/** The open reports of the office and those that wait on this phone, each with what was added to it here; the oldest first. What the office refused is a stop all the same. */
export function stopsNow(reports: readonly FoundReport[], outbox: readonly OutboxEntry[], jobId: string, memberId: string | null): readonly StopNow[] {
  const here = outbox.filter((entry) => entry.jobId === jobId);
  const more = here.filter((entry): entry is OutboxFoundMore => entry.kind === 'foundMore');
  const unsent = here.filter((entry): entry is OutboxFound => entry.kind === 'found' && !reports.some(({ id }) => id === reportId(entry)));
  const known = reports.filter(({ status }) => status === 'open').map((report) => {
    const added = more.filter((entry) => entry.reportId === report.id && !(report.additions ?? []).some(({ id }) => id === entry.id));
    const at = report.stoppedAt ?? report.reportedAt;
    return { ...said(report, added), id: report.id, at, hitAt: hitAt([...(report.additions ?? []), ...added.map(({ more: told }) => told), { ...report, at }]), inOffice: true, waiting: added.length, mine: report.reportedById === memberId };
  });
  const waits = unsent.map((entry) => {
    const added = more.filter((one) => one.reportId === reportId(entry));
    const at = entry.report.at ?? madeAt(entry.id);
    return { ...said({ hit: null, ...entry.report }, added), id: reportId(entry), at, hitAt: hitAt([{ ...entry.report, at }, ...added.map(({ more: told }) => told)]), inOffice: false, waiting: added.length + 1, mine: true };
  });
  return [...known, ...waits].toSorted((a, b) => a.at.localeCompare(b.at));
}

/** By whichever of these told it first. */
function hitAt(told: readonly { readonly at: string; readonly hit?: FoundSaid['hit'] }[]): string | null {
  return told.find(({ hit }) => isHit(hit))?.at ?? null;
}

function reportId({ id, report }: OutboxFound): string {
  return report.id ?? id;
}

/** An answer that was kept by an earlier version of the page does not know whether a line was hit. */
function said({ kind, part, measure, note, photoIds, hit }: Omit<FoundSaid, 'hit'> & { readonly hit?: FoundSaid['hit'] }, added: readonly OutboxFoundMore[]): FoundSaid {
  return withAdded({ kind, part, measure, note, photoIds, hit: hit ?? null }, added.map(({ more }) => ({ ...more, hit: more.hit ?? null })));
}
