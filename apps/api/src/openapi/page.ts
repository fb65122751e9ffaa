import { allEndpoints, type Endpoint, errorCodes, permissions } from '@yardfall/contracts';
import type { Json } from './components.ts';
import { buildOpenApi } from './document.ts';

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

function escape(text: string): string {
  return text.replace(/[&<>"']/g, (character) => escapes[character] ?? character);
}

interface Operation {
  readonly parameters: readonly { name: string; in: string; required: boolean; schema: unknown; description?: string }[];
  readonly requestBody?: { content: Record<string, { schema: unknown }> };
  readonly responses: Record<string, { description: string; content?: Record<string, { schema: unknown }> }>;
}

/** A reference to read, without scripts: one section an endpoint, one a named shape. */
export function referencePage(endpoints: readonly Endpoint[] = allEndpoints): string {
  const document = buildOpenApi(endpoints);
  const paths = document['paths'] as Record<string, Record<string, Operation>>;
  const { schemas } = document['components'] as { schemas: Record<string, Json> };
  const groups = groupsOf(endpoints);
  const contents = [...groups].map(([name, list]) => `<li><a href="#${name}">${name}</a><ul>${list.map(({ id }) => `<li><a href="#${id}">${id}</a></li>`).join('')}</ul></li>`);
  const sections = [...groups].map(([name, list]) => `<h2 id="${name}">${name}</h2>${list.map((endpoint) => section(endpoint, operationOf(endpoint, paths))).join('')}`);
  const shapes = Object.entries(schemas).map(([name, schema]) => `<article id="schema-${name}"><h3>${name}</h3>${json(schema)}</article>`);
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Yardfall API</title>
<link rel="stylesheet" href="/api/docs.css"></head><body><nav><a href="/api/v1/openapi.json">OpenAPI 3.1</a><ul>${contents.join('')}<li><a href="#shapes">shapes</a></li></ul></nav>
<main><h1>Yardfall API</h1>${introduction()}${sections.join('')}<h2 id="shapes">Shapes</h2>${shapes.join('')}</main></body></html>`;
}

function groupsOf(endpoints: readonly Endpoint[]): ReadonlyMap<string, readonly Endpoint[]> {
  const groups = new Map<string, Endpoint[]>();
  for (const endpoint of endpoints) {
    const name = endpoint.id.split('.')[0] ?? '';
    groups.set(name, [...(groups.get(name) ?? []), endpoint]);
  }
  return groups;
}

function introduction(): string {
  const codes = Object.entries(errorCodes).map(([code, status]) => `<tr><td>${status}</td><td><code>${code}</code></td></tr>`);
  const roles = Object.entries(permissions).map(([permission, holders]) => `<tr><td><code>${permission}</code></td><td>${holders.join(', ')}</td></tr>`);
  return `<p>Lengths in metres, flows in m³/s, times in seconds, money in US cents, instants in RFC 3339. Sign in with <code>POST /api/v1/session</code>; the session is a cookie.</p>
<p>A <code>POST</code> wants an <code>Idempotency-Key</code> (16 to 200 characters, a new UUID for each intent): a repeat with the same body gets the same answer, and the effect happens once.
Where an answer carries an <code>ETag</code>, a change wants it back in <code>If-Match</code>. Errors are <code>application/problem+json</code> with a <code>code</code> of this table.</p>
<details><summary>Error codes</summary><table>${codes.join('')}</table></details><details><summary>Permissions and roles</summary><table>${roles.join('')}</table></details>`;
}

function operationOf(endpoint: Endpoint, paths: Record<string, Record<string, Operation>>): Operation {
  const operation = paths[endpoint.fullPath.replace(/:([A-Za-z]+)/g, '{$1}')]?.[endpoint.method.toLowerCase()];
  if (operation === undefined) throw new Error(`${endpoint.id} is not in the document`);
  return operation;
}

function section(endpoint: Endpoint, operation: Operation): string {
  const parameters = operation.parameters.map(({ name, in: place, required, schema }) => `<tr><td><code>${name}</code></td><td>${place}${required ? '' : ', optional'}</td><td>${json(schema)}</td></tr>`);
  const body = Object.entries(operation.requestBody?.content ?? {}).map(([type, { schema }]) => `<h4>Sends ${escape(type)}</h4>${json(schema)}`);
  const answers = Object.entries(operation.responses).map(([status, { description, content }]) => `<tr><td>${status}</td><td>${escape(description)}</td><td>${answer(content)}</td></tr>`);
  return `<article id="${endpoint.id}"><h3><code>${endpoint.method} ${escape(endpoint.fullPath)}</code></h3><p>${escape(endpoint.summary)}</p><p class="access">${access(endpoint)}</p>
${parameters.length > 0 ? `<h4>Parameters</h4><table>${parameters.join('')}</table>` : ''}${body.join('')}<h4>Answers</h4><table>${answers.join('')}</table></article>`;
}

function answer(content: Record<string, { schema: unknown }> | undefined): string {
  return Object.entries(content ?? {}).map(([type, { schema }]) => (type === 'application/problem+json' ? 'problem' : json(schema))).join('');
}

function access(endpoint: Endpoint): string {
  if ('public' in endpoint.access) return `Public: ${escape(endpoint.access.public)}.`;
  if ('session' in endpoint.access) return 'Anyone signed in.';
  return `Needs <code>${endpoint.access.permission}</code>: ${permissions[endpoint.access.permission].join(', ')}.`;
}

/** Named shapes become links to where they are shown. */
function json(schema: unknown): string {
  const text = escape(JSON.stringify(schema, null, 1));
  return `<pre>${text.replace(/&quot;#\/components\/schemas\/(\w+)&quot;/g, '<a href="#schema-$1">$1</a>')}</pre>`;
}

export const referenceStyle = `
:root { color-scheme: light dark; --line: #8886; --ink: #1d2420; --paper: #fbfaf7; --link: #1f5f8b }
@media (prefers-color-scheme: dark) { :root { --ink: #e8e6df; --paper: #171a18; --link: #8fc3e8 } }
* { box-sizing: border-box }
body { margin: 0; color: var(--ink); background: var(--paper); font: 16px/1.5 system-ui, sans-serif; display: grid; grid-template-columns: 17rem minmax(0, 1fr) }
nav { position: sticky; top: 0; height: 100vh; overflow: auto; padding: 1rem; border-right: 1px solid var(--line); font-size: 14px }
nav ul { list-style: none; padding-left: .75rem; margin: 0 }
main { padding: 1rem 2rem; max-width: 60rem }
a { color: var(--link) }
article { border-top: 1px solid var(--line); padding: .5rem 0 1rem }
table { border-collapse: collapse; width: 100% }
td { border-bottom: 1px solid var(--line); padding: .25rem .5rem; vertical-align: top }
pre { margin: 0; font: 13px/1.4 ui-monospace, monospace; white-space: pre-wrap; overflow-wrap: anywhere; max-height: 24rem; overflow: auto }
.access { font-size: 14px }
@media (max-width: 48rem) { body { display: block } nav { position: static; height: auto; max-height: 40vh } main { padding: 1rem } }
`;
