import { randomUUID } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import pg from 'pg';
import { key, makeCompany, password, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

interface Heard {
  readonly event: string;
  readonly id: string;
  readonly data: { topic?: string; subjectId?: string | null };
}

/** Reads a stream as a browser does. */
class Reader {
  readonly heard: Heard[] = [];
  ended = false;
  private readonly stop = new AbortController();
  private wake: () => void = () => undefined;

  static async open(test: TestApp, cookie: string, lastId?: string): Promise<Reader> {
    const reader = new Reader();
    const { port } = test.server.address() as AddressInfo;
    const response = await fetch(`http://127.0.0.1:${port}/api/v1/events`, { headers: { cookie, ...(lastId === undefined ? {} : { 'Last-Event-ID': lastId }) }, signal: reader.stop.signal });
    if (response.status !== 200 || response.headers.get('content-type') !== 'text/event-stream') throw new Error(`no stream: ${response.status}`);
    void reader.read(response);
    await reader.until(({ event }) => event === 'ready');
    return reader;
  }

  /** A slow transaction in another test's database of the same server holds up what is read. */
  async until(wanted: (heard: Heard) => boolean, ms = 60_000): Promise<Heard> {
    for (const end = Date.now() + ms; Date.now() < end;) {
      const found = this.heard.find(wanted);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => {
        this.wake = resolve;
        setTimeout(resolve, 200);
      });
    }
    throw new Error(`not heard; only ${JSON.stringify(this.heard)}`);
  }

  close(): void {
    this.stop.abort();
  }

  private async read(response: Response): Promise<void> {
    let text = '';
    try {
      for await (const chunk of response.body ?? []) {
        text += Buffer.from(chunk as Uint8Array).toString('utf8');
        const blocks = text.split('\n\n');
        text = blocks.pop() ?? '';
        for (const block of blocks) this.take(block);
        this.wake();
      }
      this.ended = true;
    } catch (error) {
      if (!this.stop.signal.aborted) throw error;
    }
  }

  private take(block: string): void {
    const field = (name: string): string => new RegExp(`^${name}: (.*)$`, 'm').exec(block)?.[1] ?? '';
    if (field('event') !== '') this.heard.push({ event: field('event'), id: field('id'), data: JSON.parse(field('data')) as Heard['data'] });
  }
}

describe('live notices', () => {
  let test: TestApp;
  let ours: TestCompany;
  let theirs: TestCompany;
  const open: Reader[] = [];
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test, 'Our Yards');
    theirs = await makeCompany(test, 'Their Yards');
  });
  afterEach(() => {
    for (const reader of open.splice(0)) reader.close();
  });
  afterAll(() => test.close());

  const signIn = async (email: string): Promise<string> => {
    const { port } = test.server.address() as AddressInfo;
    const response = await fetch(`http://127.0.0.1:${port}/api/v1/session`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ email, password }) });
    return response.headers.getSetCookie().map((line) => line.split(';')[0]).join('; ');
  };
  const listen = async (cookie: string, lastId?: string): Promise<Reader> => {
    const reader = await Reader.open(test, cookie, lastId);
    open.push(reader);
    return reader;
  };
  const invite = async (company: TestCompany): Promise<string> => {
    const { body } = await company.owner.agent.post('/api/v1/members').set(key()).send({ name: 'New', email: `${randomUUID()}@example.test`, roles: ['crew'] }).expect(201);
    return body.member.id as string;
  };
  const of = (id: string) => ({ data }: Heard) => data.subjectId === id;

  it('reach the company that they are of, and no other', async () => {
    const [here, there] = [await listen(await signIn(ours.crew.email)), await listen(await signIn(theirs.crew.email))];
    const invited = await invite(ours);
    expect(await here.until(of(invited))).toMatchObject({ event: 'notice', data: { topic: 'members' } });
    const other = await invite(theirs);
    await there.until(of(other));
    expect(there.heard.filter(of(invited))).toEqual([]);
    expect(here.heard.filter(of(other))).toEqual([]);
  });

  it('come again from the last one that was heard', async () => {
    const cookie = await signIn(ours.crew.email);
    const first = await listen(cookie);
    const seen = await invite(ours);
    const { id } = await first.until(of(seen));
    first.close();
    const missed = await invite(ours);
    const second = await listen(cookie, id);
    await second.until(of(missed));
    expect(second.heard.filter(of(seen))).toEqual([]);
  });

  it('miss nothing of a slower transaction', async () => {
    const reader = await listen(await signIn(ours.crew.email));
    const slow = new pg.Client({ connectionString: test.env.MIGRATE_DATABASE_URL });
    await slow.connect();
    const late = randomUUID();
    await slow.query('BEGIN');
    await slow.query(`INSERT INTO event (id, company_id, xid, topic, subject_id) VALUES ($1, $2, 0, 'late', $3)`, [randomUUID(), ours.id, late]);
    const quick = await invite(ours);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(reader.heard.filter(of(quick))).toEqual([]);
    await slow.query('COMMIT');
    await slow.end();
    await reader.until(of(quick));
    const order = reader.heard.map(({ data }) => data.subjectId).filter((id) => id === late || id === quick);
    expect(order).toEqual([late, quick]);
  });

  it('end with the session', async () => {
    const cookie = await signIn(ours.estimator.email);
    const reader = await listen(cookie);
    const { port } = test.server.address() as AddressInfo;
    const out = await fetch(`http://127.0.0.1:${port}/api/v1/session`, { method: 'DELETE', headers: { cookie } });
    expect(out.status).toBe(204);
    await reader.until(({ event }) => event === 'ended');
    await expect.poll(() => reader.ended).toBe(true);
  });

  it('survive the loss of the listening connection', async () => {
    const reader = await listen(await signIn(ours.crew.email));
    const { rowCount } = await test.owner.query(`SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'yardfall-listen' AND datname = current_database()`);
    expect(rowCount).toBe(1);
    await reader.until(of(await invite(ours)));
  });
});
