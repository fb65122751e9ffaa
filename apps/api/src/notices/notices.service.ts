import { Inject, Injectable, type OnModuleDestroy } from '@nestjs/common';
import type { Response } from 'express';
import type { Actor } from '../common/actor.ts';
import { Database } from '../common/database.ts';
import { LOG, type Log } from '../common/log.ts';
import { Listener } from './listener.ts';
import { type Cursor, currentCursor, newsSince, readCursor, writeCursor } from './notices.queries.ts';

const heartbeat = 20_000;
const soon = 100;
const perSession = 3;

interface Stream {
  readonly actor: Actor;
  readonly response: Response;
  cursor: Cursor;
  reading: boolean;
  again: boolean;
  timer: NodeJS.Timeout | null;
  beat: NodeJS.Timeout;
}

/** Server-sent events: every open stream of a company looks for news when the database says that there is some. */
@Injectable()
export class NoticesService implements OnModuleDestroy {
  private readonly database: Database;
  private readonly listener: Listener;
  private readonly log: Log;
  private readonly streams = new Set<Stream>();

  constructor(database: Database, listener: Listener, @Inject(LOG) log: Log) {
    this.database = database;
    this.listener = listener;
    this.log = log;
    listener.onNews((companyId) => {
      for (const stream of this.streams) if (companyId === null || stream.actor.companyId === companyId) this.look(stream);
    });
  }

  async open(actor: Actor, after: string | undefined, response: Response): Promise<void> {
    await this.listener.ensure();
    const given = after === undefined ? null : readCursor(after);
    const cursor = given ?? (await this.database.sql(actor, currentCursor));
    response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store', 'X-Accel-Buffering': 'no' });
    response.write(`retry: 2000\nid: ${writeCursor(cursor)}\nevent: ready\ndata: {}\n\n`);
    const stream: Stream = { actor, response, cursor, reading: false, again: false, timer: null, beat: setInterval(() => this.tick(stream), heartbeat) };
    this.closeOldest(actor);
    this.streams.add(stream);
    response.on('close', () => this.forget(stream));
    this.look(stream);
  }

  /** Before the server waits for its connections to end. */
  onModuleDestroy(): void {
    for (const stream of this.streams) this.close(stream, null);
  }

  private tick(stream: Stream): void {
    stream.response.write(': here\n\n');
    this.look(stream);
  }

  private look(stream: Stream): void {
    if (stream.reading) {
      stream.again = true;
      return;
    }
    stream.reading = true;
    this.send(stream).then(
      (more) => this.rest(stream, more),
      (error: unknown) => {
        this.log.warn({ err: String(error) }, 'a stream could not read its news');
        this.close(stream, null); // the browser comes back with its last id
      },
    );
  }

  private rest(stream: Stream, more: boolean): void {
    stream.reading = false;
    if (!this.streams.has(stream)) return;
    if (stream.again) {
      stream.again = false;
      this.look(stream);
    } else if (more) {
      stream.timer ??= setTimeout(() => {
        stream.timer = null;
        this.look(stream);
      }, soon);
    }
  }

  private async send(stream: Stream): Promise<boolean> {
    const news = await this.database.sql(stream.actor, (client) => newsSince(client, stream.actor, stream.cursor));
    if (news.ended) {
      this.close(stream, 'ended');
      return false;
    }
    for (const notice of news.notices) stream.response.write(`id: ${notice.cursor}\nevent: notice\ndata: ${JSON.stringify(notice)}\n\n`);
    stream.cursor = news.cursor;
    return news.more;
  }

  private closeOldest(actor: Actor): void {
    const own = [...this.streams].filter((stream) => stream.actor.sessionId === actor.sessionId);
    for (const stream of own.slice(0, Math.max(0, own.length - perSession + 1))) this.close(stream, 'replaced');
  }

  private close(stream: Stream, reason: string | null): void {
    if (reason !== null) stream.response.write(`event: ${reason}\ndata: {}\n\n`);
    this.forget(stream);
    stream.response.end();
  }

  private forget(stream: Stream): void {
    clearInterval(stream.beat);
    if (stream.timer !== null) clearTimeout(stream.timer);
    this.streams.delete(stream);
  }
}
