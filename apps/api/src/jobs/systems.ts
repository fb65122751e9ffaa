import type { SystemPart } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';

interface Row {
  readonly jobId: string;
  readonly roof: boolean;
  readonly drain: boolean;
  readonly pipe: boolean;
  readonly swale: boolean;
  readonly pump: boolean;
}

/**
 * What the designs of these jobs are made of: the build revision of each, or its newest one. Documents stay in the database:
 * they are canonical JSON, in which a kind of part has one spelling, and inside a text the quotes would be escaped.
 */
export async function systemsOf(tx: Tx, actor: Actor, jobIds: readonly string[]): Promise<ReadonlyMap<string, SystemPart[]>> {
  if (jobIds.length === 0) return new Map();
  const rows = await tx.$queryRaw<Row[]>`
    SELECT r.job_id AS "jobId",
      position('"kind":"leader"'::bytea IN r.document) > 0 AS roof,
      position('"kind":"channel"'::bytea IN r.document) > 0 OR position('"kind":"catchBasin"'::bytea IN r.document) > 0 AS drain,
      position('"kind":"pipe"'::bytea IN r.document) > 0 OR position('"kind":"roofLine"'::bytea IN r.document) > 0 AS pipe,
      position('"kind":"swale"'::bytea IN r.document) > 0 AS swale,
      position('"kind":"pump"'::bytea IN r.document) > 0 AS pump
    FROM (
      SELECT DISTINCT ON (revision.job_id) revision.job_id, revision.document
      FROM revision JOIN job ON job.company_id = revision.company_id AND job.id = revision.job_id
      WHERE revision.company_id = ${actor.companyId}::uuid AND revision.job_id = ANY(${jobIds}::uuid[])
      ORDER BY revision.job_id, (revision.id = job.build_revision_id) DESC NULLS LAST, revision.created_at DESC, revision.id DESC
    ) AS r`;
  const names = ['roof', 'drain', 'pipe', 'swale', 'pump'] as const;
  return new Map(rows.map((row) => [row.jobId, names.filter((name) => row[name])]));
}
