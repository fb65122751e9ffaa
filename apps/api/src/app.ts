import 'reflect-metadata';
import { DiscoveryService, MetadataScanner, NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { NextFunction, Request, Response } from 'express';
import helmet from 'helmet';
import { AppModule } from './app.module.ts';
import { Clock } from './common/clock.ts';
import { createLog, type Log, NestLog } from './common/log.ts';
import { contextOf, openContext } from './common/request.ts';
import { checkRoutes, registeredRoutes } from './common/routes.check.ts';
import { Worker } from './common/worker.ts';
import type { Env } from './env.ts';
import { smallerAnswers } from './smaller.ts';
import { serveWeb } from './web.ts';

export interface AppOptions {
  readonly env: Env;
  readonly log?: Log;
  readonly clock?: Clock;
}

/** The whole service, ready to listen; the tests and the seed start the same one. */
export async function createApp({ env, log = createLog(env.LOG_LEVEL), clock = new Clock() }: AppOptions): Promise<NestExpressApplication> {
  const app = await NestFactory.create<NestExpressApplication>(AppModule.of({ env, log, clock }), { logger: new NestLog(log), bodyParser: false, abortOnError: false });
  app.set('trust proxy', env.TRUST_PROXY);
  app.disable('x-powered-by');
  app.set('etag', false);
  app.use((request: Request, response: Response, next: NextFunction) => {
    openContext(request, response, clock.now(), env.PUBLIC_URL);
    logWhenDone(request, response, log);
    next();
  });
  app.use(helmet({ contentSecurityPolicy: { useDefaults: false, directives: contentPolicy(env) }, strictTransportSecurity: isHttps(env) }));
  app.use(smallerAnswers);
  if (env.WEB_DIST !== undefined) serveWeb(app, env.WEB_DIST);
  await app.get(Worker).install();
  await app.init();
  checkRoutes(registeredRoutes(app.get(DiscoveryService), app.get(MetadataScanner)));
  return app;
}

function isHttps(env: Env): boolean {
  return env.PUBLIC_URL?.startsWith('https:') ?? false;
}

/** No inline script or style anywhere; drawings are SVG elements, photos come from the service, what is still in the outbox from memory. */
function contentPolicy(env: Env): Record<string, string[]> {
  const policy: Record<string, string[]> = {
    'default-src': ["'self'"], 'script-src': ["'self'"], 'style-src': ["'self'"], 'img-src': ["'self'", 'blob:', 'data:'], 'media-src': ["'self'", 'blob:'], 'font-src': ["'self'"], 'connect-src': ["'self'"],
    'worker-src': ["'self'"], 'manifest-src': ["'self'"], 'object-src': ["'none'"], 'base-uri': ["'none'"], 'form-action': ["'self'"], 'frame-ancestors': ["'none'"],
  };
  return isHttps(env) ? { ...policy, 'upgrade-insecure-requests': [] } : policy;
}

/** The route by its name and never by its address: addresses may hold tokens. */
function logWhenDone(request: Request, response: Response, log: Log): void {
  const begun = process.hrtime.bigint();
  response.on('close', () => {
    const { info, actor } = contextOf(request);
    const ms = Number(process.hrtime.bigint() - begun) / 1e6;
    log.info({ requestId: info.id, route: info.endpoint?.id ?? 'other', method: request.method, status: response.statusCode, ms: Math.round(ms * 10) / 10, companyId: actor?.companyId, actorId: actor?.id }, 'request');
  });
}
