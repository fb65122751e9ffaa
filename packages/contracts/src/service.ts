import { z } from 'zod';
import { endpoint, type Endpoint } from './endpoint.ts';

const Check = z.object({ ok: z.boolean(), code: z.string() });
export const Readiness = z.object({ ready: z.boolean(), database: Check, migrations: Check, role: Check }).meta({ id: 'Readiness' });
export type Readiness = z.infer<typeof Readiness>;

/** Outside /api/v1, where probes and people look for them. */
function at<E extends Endpoint>(fullPath: string, described: E): E {
  return { ...described, fullPath };
}

const health = endpoint({
  id: 'service.health', method: 'GET', path: '/health', summary: 'The process answers', access: { public: 'probes have no session; says nothing but that' }, status: 200,
  params: null, query: null, body: null, response: z.object({ ok: z.literal(true) }),
});
const ready = endpoint({
  id: 'service.ready', method: 'GET', path: '/ready', summary: 'Database, migrations and the rights of the app role; 503 until all are right',
  access: { public: 'probes have no session; holds no data' }, status: 200, params: null, query: null, body: null, response: Readiness, errors: ['busy'],
});
const reference = endpoint({
  id: 'service.reference', method: 'GET', path: '/docs', summary: 'This reference as a page', access: { public: 'the description of the API holds no data' }, status: 200,
  params: null, query: null, body: null, response: null, produces: 'text/html; charset=utf-8',
});

const style = endpoint({
  id: 'service.referenceStyle', method: 'GET', path: '/docs.css', summary: 'The style of the reference page', access: { public: 'a stylesheet holds no data' }, status: 200,
  params: null, query: null, body: null, response: null, produces: 'text/css; charset=utf-8',
});

export const service = {
  health: at('/health', health),
  ready: at('/ready', ready),
  openapi: endpoint({
    id: 'service.openapi', method: 'GET', path: '/openapi.json', summary: 'This reference as OpenAPI 3.1', access: { public: 'the description of the API holds no data' }, status: 200,
    params: null, query: null, body: null, response: null, produces: 'application/json',
  }),
  reference: at('/api/docs', reference),
  referenceStyle: at('/api/docs.css', style),
};
