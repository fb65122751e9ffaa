import { Inject, Injectable, type OnModuleDestroy } from '@nestjs/common';
import pg from 'pg';
import { describe, LOG, type Log } from '../common/log.ts';
import { ENV, type Env } from '../env.ts';

const channel = 'yardfall_events';
const retry = 1_000;

/** One direct connection an instance: a pooler would not carry LISTEN. It says only which company has news. */
@Injectable()
export class Listener implements OnModuleDestroy {
  private readonly url: string;
  private readonly log: Log;
  private readonly hearers = new Set<(companyId: string | null) => void>();
  private client: pg.Client | null = null;
  private timer: NodeJS.Timeout | null = null;
  private closed = false;

  constructor(@Inject(ENV) env: Env, @Inject(LOG) log: Log) {
    this.url = env.DATABASE_URL;
    this.log = log;
  }

  /** `null`: the line was cut and is back; anything may have happened. */
  onNews(hear: (companyId: string | null) => void): void {
    this.hearers.add(hear);
  }

  /** Connects when the first stream opens; afterwards it stays. */
  async ensure(): Promise<void> {
    if (this.client !== null || this.closed) return;
    const client = new pg.Client({ connectionString: this.url, application_name: 'yardfall-listen', connectionTimeoutMillis: 5_000 });
    this.client = client;
    client.on('error', (error) => this.lost(client, error));
    client.on('end', () => this.lost(client, null));
    client.on('notification', ({ payload }) => this.tell(payload ?? null));
    try {
      await client.connect();
      await client.query(`LISTEN ${channel}`);
    } catch (error) {
      this.lost(client, error);
      throw error;
    }
  }

  async onModuleDestroy(): Promise<void> {
    this.closed = true;
    if (this.timer !== null) clearTimeout(this.timer);
    await this.client?.end();
  }

  private tell(companyId: string | null): void {
    for (const hear of this.hearers) hear(companyId);
  }

  private lost(client: pg.Client, error: unknown): void {
    if (this.client !== client || this.closed) return;
    this.client = null;
    this.log.warn({ err: error === null ? 'ended' : describe(error) }, 'the listening connection was lost');
    this.timer = setTimeout(() => {
      this.ensure().then(
        () => this.tell(null),
        () => undefined, // lost() has already set the next try
      );
    }, retry);
  }
}
