import type { Request, Response } from 'express';
import { languages, type Language } from '@yardfall/text';
import type { Actor, RequestInfo } from './actor.ts';
import { newId } from './ids.ts';

export interface UploadedFile {
  readonly bytes: Buffer;
  readonly name: string;
  readonly mediaType: string;
}

/** What the frame keeps beside a request while it is served. */
export interface RequestContext {
  info: RequestInfo;
  actor: Actor | null;
  input: { params: unknown; query: unknown; body: unknown };
  file: UploadedFile | null;
}

const contexts = new WeakMap<Request, RequestContext>();

export function contextOf(request: Request): RequestContext {
  const context = contexts.get(request);
  if (context === undefined) throw new Error('the request has no context');
  return context;
}

/** First in the chain: the id that the answer, the log and the trail share. */
export function openContext(request: Request, response: Response, at: Date, publicUrl: string | undefined): RequestContext {
  const given = request.get('x-request-id');
  const id = given !== undefined && /^[A-Za-z0-9._-]{8,64}$/.test(given) ? given : newId();
  response.setHeader('X-Request-Id', id);
  const info: RequestInfo = {
    id, at, language: languageOf(request), ip: request.ip ?? '', userAgent: (request.get('user-agent') ?? '').slice(0, 300),
    origin: publicUrl ?? `${request.protocol}://${request.get('host') ?? 'localhost'}`,
    endpoint: null, ifMatch: request.get('if-match') ?? null, idempotency: null,
  };
  const context: RequestContext = { info, actor: null, input: { params: undefined, query: undefined, body: undefined }, file: null };
  contexts.set(request, context);
  return context;
}

function languageOf(request: Request): Language {
  const accepted = request.acceptsLanguages([...languages]);
  return accepted === false ? 'en' : (accepted as Language);
}
