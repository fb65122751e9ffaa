import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { type Access, type Endpoint, may } from '@yardfall/contracts';
import type { Request, Response } from 'express';
import type { Actor } from './actor.ts';
import { Database } from './database.ts';
import { DomainError } from './errors.ts';
import { contextOf } from './request.ts';
import { ENDPOINT } from './route.ts';
import { readSender, senderTokenOf } from './sender.ts';
import { readSession, tokenOf } from './session.ts';
import { speakTus } from './tus.ts';

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
    const response = execution.switchToHttp().getResponse<Response>();
    if ('public' in endpoint.access) {
      speakTus(endpoint, request, response);
      return true;
    }
    context.actor = await this.actorOf(request, endpoint);
    if (context.actor.cutOff === true && endpoint.fromCutOff !== true) throw new DomainError('auth.phoneCutOff');
    requireAccess(endpoint.access, context.actor);
    speakTus(endpoint, request, response);
    if (endpoint.concurrency === 'ifMatch' && context.info.ifMatch === null) throw new DomainError('conflict.preconditionRequired');
    return true;
  }

  /** One browser may hold a session and a link that takes photos: the endpoints of such links ask for the link first, all others for the session. */
  private async actorOf(request: Request, { access }: Endpoint): Promise<Actor> {
    const { info } = contextOf(request);
    const { pool } = this.database;
    const [session, link] = [tokenOf(request), senderTokenOf(request)];
    const asMember = () => (session === null ? null : readSession(pool, session, info));
    // A link that takes photos is no session: it opens its own page, and what asks for a session alone does not know it.
    const asSender = () => (link === null || !('permission' in access) ? null : readSender(pool, link, info));
    const isForSenders = 'permission' in access && may(['sender'], access.permission);
    const actor = isForSenders ? ((await asSender()) ?? (await asMember())) : ((await asMember()) ?? (await asSender()));
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
