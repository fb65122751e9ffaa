import { allEndpoints, type Endpoint, errorCodes, type ErrorCode, permissions, Problem } from '@yardfall/contracts';
import { Components, type Json } from './components.ts';

/** OpenAPI 3.1 from the same contracts that the routes are bound to. */
export function buildOpenApi(endpoints: readonly Endpoint[] = allEndpoints): Json {
  const components = new Components();
  components.add(Problem, 'output');
  const operations = endpoints.map((endpoint) => ({ endpoint, parts: partsOf(endpoint, components) }));
  const paths: Record<string, Record<string, unknown>> = {};
  for (const { endpoint, parts } of operations) {
    const path = endpoint.fullPath.replace(/:([A-Za-z]+)/g, '{$1}');
    paths[path] = { ...paths[path], [endpoint.method.toLowerCase()]: operationOf(endpoint, parts, components) };
  }
  return {
    openapi: '3.1.0',
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    info: { title: 'Yardfall', version: '1', description: 'Lengths in metres, flows in m3/s, times in seconds, money in US cents. Errors are problem documents (RFC 9457).' },
    servers: [{ url: '/' }],
    tags: [...new Set(endpoints.map(tagOf))].map((name) => ({ name })),
    paths,
    components: {
      schemas: components.all(),
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: 'yardfall_session' } },
    },
  };
}

interface Parts {
  readonly params: Json | null;
  readonly query: Json | null;
  readonly body: Json | null;
  readonly response: Json | null;
}

function partsOf(endpoint: Endpoint, components: Components): Parts {
  return {
    params: endpoint.params && components.add(endpoint.params, 'input'),
    query: endpoint.query && components.add(endpoint.query, 'input'),
    body: endpoint.body && components.add(endpoint.body, 'input'),
    response: endpoint.response && components.add(endpoint.response, 'output'),
  };
}

function tagOf(endpoint: Endpoint): string {
  return endpoint.id.split('.')[0] ?? '';
}

function operationOf(endpoint: Endpoint, parts: Parts, components: Components): Json {
  return {
    operationId: endpoint.id,
    tags: [tagOf(endpoint)],
    summary: endpoint.summary,
    description: accessOf(endpoint),
    security: 'public' in endpoint.access ? [] : [{ session: [] }],
    parameters: [...parametersOf(parts.params, 'path', components), ...parametersOf(parts.query, 'query', components), ...headersOf(endpoint)],
    ...bodyOf(endpoint, parts.body, components),
    responses: { [endpoint.status]: answerOf(endpoint, parts.response, components), ...problemsOf(endpoint) },
  };
}

function accessOf({ access }: Endpoint): string {
  if ('public' in access) return `Public: ${access.public}.`;
  return 'session' in access ? 'Anyone signed in.' : `Permission ${access.permission}: ${permissions[access.permission].join(', ')}.`;
}

function parametersOf(schema: Json | null, place: 'path' | 'query', components: Components): Json[] {
  const required = new Set((schema?.['required'] ?? []) as string[]);
  return Object.entries((schema?.['properties'] ?? {}) as Record<string, Json>).map(([name, property]) => ({
    name, in: place, required: place === 'path' || required.has(name), schema: components.resolve(property, 'input'),
  }));
}

function headersOf(endpoint: Endpoint): Json[] {
  const header = (name: string, required: boolean, description: string): Json => ({ name, in: 'header', required, description, schema: { type: 'string' } });
  const isWrite = endpoint.method !== 'GET' && endpoint.idempotency !== 'none';
  return [
    ...tusHeaders(endpoint).map(([name, description]) => header(name, true, description)),
    ...(isWrite ? [header('Idempotency-Key', endpoint.method === 'POST', 'A repeat with the same key and body gets the same answer; kept 400 days')] : []),
    ...(endpoint.concurrency === 'ifMatch' ? [header('If-Match', true, 'The ETag that the caller last saw')] : []),
  ];
}

function tusHeaders({ tus }: Endpoint): [string, string][] {
  if (tus === undefined || tus === 'capabilities') return [];
  const version: [string, string] = ['Tus-Resumable', 'The version of the protocol: 1.0.0'];
  if (tus === 'creation') return [version, ['Upload-Length', 'Bytes of the whole file'], ['Upload-Metadata', '`meta` and, in base64, the JSON of the description']];
  return tus === 'append' ? [version, ['Upload-Offset', 'Where these bytes begin']] : [version];
}

function bodyOf(endpoint: Endpoint, schema: Json | null, components: Components): Json {
  if (endpoint.tus === 'append') return { requestBody: { required: true, content: { 'application/offset+octet-stream': { schema: { type: 'string', contentMediaType: 'application/octet-stream' } } } } };
  if (schema === null || endpoint.tus !== undefined) return {};
  const json = components.resolve(schema, 'input');
  if (endpoint.upload === undefined) return { requestBody: { required: true, content: { 'application/json': { schema: json } } } };
  const file = { type: 'string', contentMediaType: endpoint.upload.types.join(', '), maxLength: endpoint.upload.maxBytes };
  const form = { type: 'object', required: ['file', 'meta'], properties: { file, meta: json } };
  return { requestBody: { required: true, content: { 'multipart/form-data': { schema: form, encoding: { meta: { contentType: 'application/json' } } } } } };
}

function answerOf(endpoint: Endpoint, schema: Json | null, components: Components): Json {
  const headers = endpoint.concurrency === undefined ? {} : { headers: { ETag: { schema: { type: 'string' } } } };
  if (endpoint.produces !== undefined) return { description: endpoint.summary, content: { [endpoint.produces]: { schema: { type: 'string' } } } };
  if (schema === null) return { description: 'Done' };
  return { description: endpoint.summary, ...headers, content: { 'application/json': { schema: components.resolve(schema, 'output') } } };
}

/** What the frame itself may answer, and what the endpoint names. */
function codesOf(endpoint: Endpoint): ErrorCode[] {
  const isPublic = 'public' in endpoint.access;
  const isWrite = endpoint.method !== 'GET';
  return [
    'request.invalid', 'busy', 'internal',
    ...(isPublic ? [] : (['auth.required'] as const)),
    ...('permission' in endpoint.access ? (['auth.forbidden'] as const) : []),
    ...(isWrite ? (['auth.badOrigin'] as const) : []),
    ...(endpoint.body === null ? [] : (['request.unreadable', 'request.tooLarge', 'request.unsupportedType'] as const)),
    ...(isWrite && !isPublic && endpoint.idempotency !== 'none' ? (['idempotency.required', 'idempotency.mismatch', 'idempotency.inFlight'] as const) : []),
    ...(endpoint.errors ?? []),
  ];
}

function problemsOf(endpoint: Endpoint): Json {
  const byStatus = new Map<number, Set<ErrorCode>>();
  for (const code of codesOf(endpoint)) {
    const status = errorCodes[code];
    byStatus.set(status, (byStatus.get(status) ?? new Set()).add(code));
  }
  const content = { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } };
  const sorted = [...byStatus].sort(([a], [b]) => a - b);
  return Object.fromEntries(sorted.map(([status, codes]) => [status, { description: [...codes].join(', '), content }]));
}
