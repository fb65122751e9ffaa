import { Injectable, type OnModuleInit } from '@nestjs/common';
import type pg from 'pg';
import { Owner } from '../common/owner.ts';
import { Worker } from '../common/worker.ts';
import { chainHash, type ChainRow, firstHash } from './chain.ts';

const batch = 500;
const sealLock = 7_270_737;

interface SealRow extends ChainRow {
  readonly sealNo: string | null;
}

const columns = `id, company_id AS "companyId", actor_kind AS "actorKind", actor_id AS "actorId", job_id AS "jobId", action, subject_id AS "subjectId", params,
  request_id AS "requestId", at, seal_no AS "sealNo"`;

/** One worker at a time numbers the committed entries of each company and chains their hashes; requests never wait for it. */
@Injectable()
export class SealService implements OnModuleInit {
  private readonly owner: Owner;
  private readonly worker: Worker;

  constructor(owner: Owner, worker: Worker) {
    this.owner = owner;
    this.worker = worker;
  }

  onModuleInit(): void {
    this.worker.routine('audit.seal', '* * * * *', async () => {
      await this.sealAll();
    });
  }

  /** @returns how many entries were sealed */
  async sealAll(): Promise<number> {
    let total = 0;
    for (let sealed = await this.sealBatch(); sealed > 0; sealed = await this.sealBatch()) total += sealed;
    return total;
  }

  private async sealBatch(): Promise<number> {
    const client = await this.owner.pool.connect();
    try {
      await client.query('BEGIN');
      await client.query('SELECT pg_advisory_xact_lock($1)', [sealLock]);
      const { rows } = await client.query<SealRow>(`SELECT ${columns} FROM audit_entry WHERE seal_no IS NULL ORDER BY company_id, at, id LIMIT $1`, [batch]);
      await sealRows(client, rows);
      await client.query('COMMIT');
      client.release();
      return rows.length;
    } catch (error) {
      client.release(true);
      throw error;
    }
  }
}

async function sealRows(client: pg.PoolClient, rows: readonly SealRow[]): Promise<void> {
  const ends = new Map<string, { number: bigint; hash: Buffer }>();
  for (const row of rows) {
    const end = ends.get(row.companyId) ?? (await lastSealed(client, row.companyId));
    const number = end.number + 1n;
    const hash = chainHash(end.hash, number, row);
    await client.query('UPDATE audit_entry SET seal_no = $1, seal_hash = $2 WHERE company_id = $3 AND id = $4', [String(number), hash, row.companyId, row.id]);
    ends.set(row.companyId, { number, hash });
  }
}

async function lastSealed(client: pg.PoolClient, companyId: string): Promise<{ number: bigint; hash: Buffer }> {
  const { rows } = await client.query<{ seal_no: string; seal_hash: Buffer }>(
    'SELECT seal_no, seal_hash FROM audit_entry WHERE company_id = $1 AND seal_no IS NOT NULL ORDER BY seal_no DESC LIMIT 1', [companyId]);
  const row = rows[0];
  return row === undefined ? { number: 0n, hash: firstHash } : { number: BigInt(row.seal_no), hash: row.seal_hash };
}
