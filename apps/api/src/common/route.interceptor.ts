import { createHash } from 'node:crypto';
import { type CallHandler, type ExecutionContext, Injectable, type NestInterceptor, StreamableFile } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { Endpoint } from '@yardfall/contracts';
import canonicalize from 'canonicalize';
import type { Request, Response } from 'express';
import { firstValueFrom, from, type Observable } from 'rxjs';
import type { IdempotencyClaim } from './actor.ts';
import { readBody } from './body.ts';
import { Database } from './database.ts';
import { DomainError } from './errors.ts';
import { etag } from './etag.ts';
import { findAnswer } from './idempotency.ts';
import { contextOf, type RequestContext, type UploadedFile } from './request.ts';
import { ENDPOINT } from './route.ts';
import { shape } from './shape.ts';
import { validate } from './validate.ts';

/** Between the guard and the handler: body, validation, repeated keys; after it: the shape of the answer and its headers. */
@Injectable()
export class RouteInterceptor implements NestInterceptor {
  private readonly database: Database;
  private readonly reflector: Reflector;

  constructor(database: Database, reflector: Reflector) {
    this.database = database;
    this.reflector = reflector;
  }

  intercept(execution: ExecutionContext, next: CallHandler): Observable<unknown> {
    return from(this.serve(execution, next));
  }

  private async serve(execution: ExecutionContext, next: CallHandler): Promise<unknown> {
    const request = execution.switchToHttp().getRequest<Request>();
    const response = execution.switchToHttp().getResponse<Response>();
    const endpoint = this.reflector.get<Endpoint>(ENDPOINT, execution.getHandler());
    const context = contextOf(request);
    const { body, file } = await readBody(endpoint, request, response);
    context.input = validate(endpoint, { params: { ...request.params }, query: { ...request.query }, body }, context.actor?.language ?? context.info.language);
    context.file = file;
    const claim = claimOf(endpoint, request, context, body, file);
    const repeated = await this.repeatedAnswer(context, claim);
    const answer = repeated === null ? await firstValueFrom(next.handle(), { defaultValue: undefined }) : repeated.body;
    if (repeated === null && claim !== null && !claim.claimed) throw new Error(`${endpoint.id} did not write through Database.write`);
    return finish(endpoint, response, answer);
  }

  /** A key that was answered before is answered the same, whatever has become of the rows since. */
  private async repeatedAnswer(context: RequestContext, claim: IdempotencyClaim | null): Promise<{ body: unknown } | null> {
    const { actor } = context;
    if (claim === null || actor === null) return null;
    context.info = { ...context.info, idempotency: claim };
    context.actor = { ...actor, request: context.info };
    return this.database.read(context.actor, (tx) => findAnswer(tx, context.actor ?? actor, claim));
  }
}

function claimOf(endpoint: Endpoint, request: Request, context: RequestContext, body: unknown, file: UploadedFile | null): IdempotencyClaim | null {
  if (context.actor === null || endpoint.method === 'GET' || endpoint.idempotency === 'none') return null;
  const key = request.get('idempotency-key');
  if (key === undefined) {
    if (endpoint.method === 'POST') throw new DomainError('idempotency.required');
    return null;
  }
  if (!/^[\x21-\x7e]{16,200}$/.test(key)) {
    throw new DomainError('request.invalid', {}, [{ path: 'headers.idempotency-key', message: '16-200 visible ASCII characters' }]);
  }
  const hash = createHash('sha256').update(request.path).update('\n').update(canonicalize(body) ?? '').update('\n');
  if (file !== null) hash.update(file.bytes);
  return { key, bodySha256: hash.digest('hex'), claimed: false };
}

function finish(endpoint: Endpoint, response: Response, answer: unknown): unknown {
  if (endpoint.produces !== undefined) {
    if (!response.headersSent && !(answer instanceof StreamableFile)) response.type(endpoint.produces);
    return answer;
  }
  const shaped = shape(endpoint, answer);
  if (endpoint.concurrency !== undefined) response.setHeader('ETag', etag(versionOf(shaped)));
  if (!response.headersSent) response.setHeader('Cache-Control', 'no-store');
  return shaped;
}

function versionOf(answer: unknown): number {
  if (typeof answer === 'object' && answer !== null && 'version' in answer && typeof answer.version === 'number') return answer.version;
  throw new Error('an answer with an ETag needs a version');
}
