import { createServer, request as ask, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';

export type Fault = 'dropBefore' | 'dropAfter' | 'badGateway' | 'twice' | 'late' | 'again' | 'none';
/**
 * What happens to one write after the other; the list is walked round. The office never sees `dropBefore` and `badGateway`; `dropAfter` loses only
 * the answer; `again` brings the same write once more behind those that follow it.
 */
const usual: readonly Fault[] = ['dropBefore', 'badGateway', 'dropAfter', 'twice', 'late', 'none', 'dropAfter', 'none'];
/** How long a write lies about before it comes a second time [ms]. */
const strayFor = 2_500;

/** A link as a yard has it, between the phone and the office: reading works, writes are dropped, answered by something else, doubled and overtaken. */
export class BadLink {
  readonly url: string;
  /** How often each fault has happened. */
  readonly happened = new Map<Fault, number>();
  private readonly server: Server;
  private writes = 0;
  private faults: readonly Fault[] = [];
  private dead = false;
  private rewrite: Rewrite | null = null;
  private readonly strays = new Set<Promise<unknown>>();

  private constructor(server: Server) {
    this.server = server;
    this.url = `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`;
  }

  static async to(office: string): Promise<BadLink> {
    const made: { link?: BadLink } = {};
    const server = createServer((incoming, answer) => void made.link?.pass(office, incoming, answer));
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    made.link = new BadLink(server);
    return made.link;
  }

  turnBad(bad: boolean, faults = usual): void {
    this.faults = bad ? faults : [];
  }

  /** Nothing passes, as in a yard without a mast. */
  turnDead(dead: boolean): void {
    this.dead = dead;
    if (dead) this.server.closeAllConnections();
  }

  /** The office answers otherwise from now on, as after a release. */
  answerOtherwise(rewrite: Rewrite): void {
    this.rewrite = rewrite;
  }

  async close(): Promise<void> {
    await Promise.allSettled(this.strays);
    this.server.closeAllConnections();
    await new Promise((resolve) => this.server.close(resolve));
  }

  private async pass(office: string, incoming: IncomingMessage, answer: ServerResponse): Promise<void> {
    const chunks: Buffer[] = [];
    if (this.dead) return void incoming.socket.destroy();
    for await (const chunk of incoming) chunks.push(chunk as Buffer);
    const body = Buffer.concat(chunks);
    const isWrite = this.faults.length > 0 && incoming.method !== 'GET' && incoming.method !== 'HEAD';
    const fault = isWrite ? (this.faults[this.writes++ % this.faults.length] ?? 'none') : 'none';
    this.happened.set(fault, (this.happened.get(fault) ?? 0) + 1);
    if (fault === 'dropBefore') return void incoming.socket.destroy();
    if (fault === 'badGateway') return void answer.writeHead(502, { 'content-type': 'text/html' }).end('<h1>Bad gateway</h1>');
    // Told whole, so that it can be told otherwise.
    if (this.rewrite !== null) for (const name of ['if-none-match', 'if-modified-since']) Reflect.deleteProperty(incoming.headers, name);
    if (fault === 'late') await new Promise((resolve) => setTimeout(resolve, 700));
    if (fault === 'twice') await forward(office, incoming, body);
    const given = await forward(office, incoming, body);
    if (fault === 'again') this.strays.add(new Promise((resolve) => setTimeout(resolve, strayFor)).then(() => forward(office, incoming, body)));
    if (fault === 'dropAfter') return void incoming.socket.destroy();
    const { status, headers, body: told } = this.rewrite?.(incoming.url ?? '/', given) ?? given;
    answer.writeHead(status, headers).end(told);
  }
}

export type Rewrite = (path: string, given: Given) => Given | undefined;

interface Given {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

function forward(office: string, { method, url, headers }: IncomingMessage, body: Buffer): Promise<Given> {
  return new Promise((resolve, reject) => {
    const onward = ask(`${office}${url ?? '/'}`, { method: method ?? 'GET', headers }, (given) => {
      const chunks: Buffer[] = [];
      given.on('data', (chunk: Buffer) => chunks.push(chunk));
      // A stream of notices never ends: the page does without it here.
      if (String(given.headers['content-type']).startsWith('text/event-stream')) given.destroy();
      given.on('close', () => resolve({ status: given.statusCode ?? 502, headers: given.headers, body: Buffer.concat(chunks) }));
    });
    onward.on('error', reject);
    onward.end(body);
  });
}
