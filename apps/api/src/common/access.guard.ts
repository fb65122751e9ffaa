import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { type Access, type Endpoint, may } from '@yardfall/contracts';
import type { Request } from 'express';
import type { Actor } from './actor.ts';
import { Database } from './database.ts';
import { DomainError } from './errors.ts';
import { contextOf } from './request.ts';
import { ENDPOINT } from './route.ts';
import { readSession, tokenOf } from './session.ts';

/** Closed by default: a handler without a contract is refused here, and already at start. */
@Injectable()
export class AccessGuard implements CanActivate {
  private readonly database: Database;
  private readonly reflector: Reflector;

  constructor(database: Database, reflector: Reflector) {
    this.database = database;
    this.reflector = reflector;
  }

  async canActivate(execution: ExecutionContext): Promise<boolean> {
    const request = execution.switchToHttp().getRequest<Request>();
    const endpoint = this.reflector.get<Endpoint | undefined>(ENDPOINT, execution.getHandler());
    if (endpoint === undefined) throw new Error('a route without a contract was called');
    const context = contextOf(request);
    context.info = { ...context.info, endpoint };
    if (endpoint.method !== 'GET') refuseOtherSites(request);
    if ('public' in endpoint.access) return true;
    context.actor = await this.actorOf(request);
    requireAccess(endpoint.access, context.actor);
    if (endpoint.concurrency === 'ifMatch' && context.info.ifMatch === null) throw new DomainError('conflict.preconditionRequired');
    return true;
  }

  private async actorOf(request: Request): Promise<Actor> {
    const token = tokenOf(request);
    const actor = token === null ? null : await readSession(this.database.pool, token, contextOf(request).info);
    if (actor === null) throw new DomainError('auth.required');
    return actor;
  }
}

function requireAccess(access: Access, actor: Actor): void {
  if ('permission' in access && !may(actor.roles, access.permission)) throw new DomainError('auth.forbidden');
}

/** A browser names where a write comes from; scripts without a browser send neither header. */
function refuseOtherSites(request: Request): void {
  const site = request.get('sec-fetch-site');
  if (site !== undefined && site !== 'same-origin' && site !== 'none') throw new DomainError('auth.badOrigin');
  const origin = request.get('origin');
  if (origin === undefined) return;
  if (!URL.canParse(origin) || new URL(origin).host !== request.get('host')) throw new DomainError('auth.badOrigin');
}
