import { type ArgumentsHost, Catch, type ExceptionFilter, Inject, Injectable } from '@nestjs/common';
import { errorCodes } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import { DomainError } from './errors.ts';
import { LOG, type Log } from './log.ts';
import { problemOf, toDomainError } from './problem.ts';
import { contextOf } from './request.ts';

/** Every error leaves here as a problem document (RFC 9457); what nobody foresaw is logged with its stack and answered as `internal`. */
@Catch()
@Injectable()
export class ProblemFilter implements ExceptionFilter {
  private readonly log: Log;

  constructor(@Inject(LOG) log: Log) {
    this.log = log;
  }

  catch(error: unknown, host: ArgumentsHost): void {
    const request = host.switchToHttp().getRequest<Request>();
    const response = host.switchToHttp().getResponse<Response>();
    const { info, actor } = contextOf(request);
    const known = toDomainError(error) ?? new DomainError('internal', {}, [], { cause: error });
    const status = errorCodes[known.code];
    if (status >= 500) this.log.error({ requestId: info.id, route: info.endpoint?.id, code: known.code, err: describe(error) }, 'the request failed');
    if (response.headersSent) {
      response.destroy();
      return;
    }
    if (status === 503) response.setHeader('Retry-After', '1');
    const wait = known.params['retryAfter'];
    if (status === 429 && typeof wait === 'number') response.setHeader('Retry-After', String(wait));
    response.setHeader('Cache-Control', 'no-store');
    response.status(status).type('application/problem+json').send(JSON.stringify(problemOf(known, actor?.language ?? info.language, info.id)));
  }
}

function describe(error: unknown): { message: string; stack?: string | undefined } {
  return error instanceof Error ? { message: error.message, stack: error.stack } : { message: String(error) };
}
