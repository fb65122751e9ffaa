import type { Notice } from '@yardfall/contracts';
import type pg from 'pg';
import type { Actor } from '../common/actor.ts';

export interface Cursor {
  readonly xid: string;
  readonly id: string;
}

const last = 'ffffffff-ffff-ffff-ffff-ffffffffffff';

export function readCursor(text: string): Cursor | null {
  const match = /^(\d{1,19})\.([0-9a-f-]{36})$/.exec(text);
  return match?.[1] === undefined || match[2] === undefined ? null : { xid: match[1], id: match[2] };
}

export function writeCursor({ xid, id }: Cursor): string {
  return `${xid}.${id}`;
}

/** Everything that commits from now on comes after it. */
export async function currentCursor(client: pg.PoolClient): Promise<Cursor> {
  const { rows } = await client.query<{ xid: string }>(`SELECT (pg_snapshot_xmin(pg_current_snapshot())::text::bigint - 1)::text AS xid`);
  return { xid: rows[0]?.xid ?? '0', id: last };
}

export interface News {
  readonly notices: readonly Notice[];
  readonly cursor: Cursor;
  /** A slower transaction is still open below what is already committed: look again soon. */
  readonly more: boolean;
  /** The session was ended, or its person's account. */
  readonly ended: boolean;
}

interface EventRow {
  readonly id: string;
  readonly xid: string;
  readonly topic: string;
  readonly job_id: string | null;
  readonly subject_id: string | null;
}

const batch = 200;

/**
 * Events in the order of their transactions, only below the snapshot's xmin: above it a slower transaction could still
 * commit an event that the reader would then have passed. Crew hear of the jobs that they are on.
 */
export async function newsSince(client: pg.PoolClient, actor: Actor, cursor: Cursor): Promise<News> {
  const { rows } = await client.query<EventRow>(
    `SELECT e.id, e.xid::text, e.topic, e.job_id, e.subject_id FROM event e
     WHERE e.company_id = $1 AND (e.xid, e.id) > ($2::bigint, $3::uuid) AND e.xid < pg_snapshot_xmin(pg_current_snapshot())::text::bigint
       AND ($4 OR e.job_id IS NULL OR EXISTS (SELECT FROM assignment a WHERE a.company_id = e.company_id AND a.job_id = e.job_id AND a.member_id = $5))
     ORDER BY e.xid, e.id LIMIT ${batch}`,
    [actor.companyId, cursor.xid, cursor.id, seesAllJobs(actor), actor.id],
  );
  const state = await client.query<{ waiting: boolean; live: boolean }>(
    `SELECT EXISTS (SELECT FROM event WHERE company_id = $1 AND xid >= pg_snapshot_xmin(pg_current_snapshot())::text::bigint) AS waiting,
       EXISTS (SELECT FROM session s JOIN member m ON m.company_id = s.company_id AND m.id = s.member_id
         WHERE s.company_id = $1 AND s.id = $2 AND s.revoked_at IS NULL AND s.cut_off_at IS NULL AND m.active) AS live`,
    [actor.companyId, actor.sessionId],
  );
  const end = rows.at(-1);
  return {
    notices: rows.map((row) => ({ id: row.id, topic: row.topic, jobId: row.job_id, subjectId: row.subject_id, cursor: writeCursor(row) })),
    cursor: end ?? cursor,
    more: rows.length === batch || state.rows[0]?.waiting === true,
    ended: state.rows[0]?.live !== true,
  };
}

function seesAllJobs(actor: Actor): boolean {
  return actor.roles.includes('owner') || actor.roles.includes('estimator');
}
