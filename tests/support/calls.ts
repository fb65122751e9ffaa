import type { IncomingMessage } from 'node:http';
import type { Endpoint } from '@yardfall/contracts';
import type { Response, Test } from 'supertest';
import { z } from 'zod';
import { tusRequest } from './tus.ts';
import { key, type Person } from './actors.ts';

/** What is sent to one endpoint. */
export interface Call {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: object;
  readonly file?: { readonly bytes: Buffer; readonly name: string; readonly mediaType: string };
  readonly ifMatch?: string;
}

type Agent = Person['agent'];

/** The code of a problem document; undefined for any other answer. */
export function problemCode({ headers, body }: Response): string | undefined {
  return String(headers['content-type']).startsWith('application/problem+json') ? (body as { code: string }).code : undefined;
}

/** Whether an address names rows by their ids, and not by words of the company's own. */
export function namesRows({ params }: Endpoint): boolean {
  return params instanceof z.ZodObject && Object.keys(params.shape).some((name) => name.endsWith('Id'));
}

export function addressOf(endpoint: Endpoint, call: Call): string {
  return endpoint.fullPath.replace(/:([A-Za-z]+)/g, (_, name: string) => {
    const value = call.params?.[name];
    if (value === undefined) throw new Error(`the sample call of ${endpoint.id} has no ${name}`);
    return encodeURIComponent(value);
  });
}

/** Sends a call as an actor; of an endless stream only the head is waited for. */
export async function send(agent: Agent, endpoint: Endpoint, call: Call): Promise<Response> {
  const method = endpoint.method.toLowerCase() as 'get' | 'post' | 'put' | 'patch' | 'delete';
  let request = agent[method](addressOf(endpoint, call)).query(call.query ?? {});
  if (endpoint.method !== 'GET' && endpoint.idempotency !== 'none') request = request.set(key());
  if (call.ifMatch !== undefined) request = request.set('If-Match', call.ifMatch);
  if (endpoint.tus !== undefined) return tusRequest(request, endpoint, call);
  if (endpoint.produces === 'text/event-stream') return headOf(request);
  if (call.file !== undefined) return request.field('meta', JSON.stringify(call.body ?? {})).attach('file', call.file.bytes, { filename: call.file.name, contentType: call.file.mediaType });
  return endpoint.body === null ? request : request.send(call.body ?? {});
}

/** A stream never ends; a problem does. */
function headOf(request: Test): Test {
  return request.buffer(true).parse((stream, done) => {
    const answer = stream as unknown as IncomingMessage;
    const chunks: Buffer[] = [];
    const isStream = answer.statusCode === 200;
    answer.on('data', (chunk: Buffer) => {
      chunks.push(chunk);
      if (!isStream) return;
      done(null, chunk.toString('utf8'));
      answer.destroy();
    });
    answer.on('end', () => {
      if (!isStream) done(null, JSON.parse(Buffer.concat(chunks).toString('utf8')));
    });
  });
}
