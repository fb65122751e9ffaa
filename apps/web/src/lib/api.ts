import { pathOf, type BodyInput, type Endpoint, type ParamsOf, type QueryInput, type ResponseOf } from '@yardfall/contracts';
import { v7 as uuidv7 } from 'uuid';
import { takeEarly } from './early.ts';
import { ApiProblem, problemOf } from './problem.ts';

/** A part that an endpoint has not may be left out, and so may one whose fields are all optional. */
export type Part<K extends string, S> = [S] extends [undefined] ? { readonly [k in K]?: undefined } : object extends S ? { readonly [k in K]?: S } : { readonly [k in K]: S };

export type CallInput<E extends Endpoint> = Part<'params', ParamsOf<E>> &
  Part<'query', QueryInput<E>> &
  Part<'body', BodyInput<E>> & {
    /** Sent as multipart, with the body as its `meta` field. */
    readonly file?: Blob;
    readonly fileName?: string;
    /** Keep the same key when the same entry is sent again. */
    readonly idempotencyKey?: string;
    readonly ifMatch?: string;
    readonly signal?: AbortSignal;
  };

export interface Answer<T> {
  readonly data: T;
  readonly etag: string | null;
}

type Args<E extends Endpoint> = object extends CallInput<E> ? [input?: CallInput<E>] : [input: CallInput<E>];

/** One request to the office, described by its endpoint; throws ApiProblem and nothing else but an abort. */
export async function call<E extends Endpoint>(endpoint: E, ...[input]: Args<E>): Promise<Answer<ResponseOf<E>>> {
  const response = await send(endpoint, input ?? {});
  if (!response.ok) throw await problemOf(response);
  const data = (readAhead.get(response) as Promise<ResponseOf<E>> | undefined) ?? readData(endpoint, response);
  return { data: await data, etag: response.headers.get('etag') };
}

const readAhead = new WeakMap<Response, Promise<unknown>>();

/** Reads an answer that was asked ahead before anybody takes it; what is wrong with it is told to whoever does. */
export function readEarly(endpoint: Endpoint, response: Response): void {
  const data = readData(endpoint, response);
  data.catch(() => undefined);
  readAhead.set(response, data);
}

/** Address of an answer that is not JSON, for a picture or a download. */
export function urlOf<E extends Endpoint>(endpoint: E, input: { readonly params?: ParamsOf<E>; readonly query?: QueryInput<E> } = {}): string {
  const path = pathOf(endpoint, (input.params ?? {}) as Record<string, string>);
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries((input.query ?? {}) as Record<string, string | number | boolean | null | undefined>)) {
    if (value !== undefined && value !== null) query.set(name, String(value));
  }
  const search = query.toString();
  return search ? `${path}?${search}` : path;
}

async function send<E extends Endpoint>(endpoint: E, input: CallInput<E> | Record<string, never>): Promise<Response> {
  const { params, query, body, file, fileName, idempotencyKey, ifMatch, signal } = input as CallInput<Endpoint>;
  const headers = new Headers({ accept: 'application/json, application/problem+json' });
  if (endpoint.method !== 'GET' && endpoint.idempotency !== 'none') headers.set('idempotency-key', idempotencyKey ?? uuidv7());
  if (ifMatch) headers.set('if-match', ifMatch);
  const content = file ? multipart(file, fileName, body) : json(body, headers);
  const url = urlOf(endpoint, { params, query } as Parameters<typeof urlOf<E>>[1]);
  try {
    const early = endpoint.method === 'GET' ? await takeEarly(url) : null;
    if (early !== null && signal?.aborted !== true) return early;
    return await fetch(url, {
      method: endpoint.method, headers, body: content, credentials: 'same-origin', cache: 'no-store', ...(signal ? { signal } : {}),
    });
  } catch (error) {
    if (signal?.aborted) throw error;
    throw new ApiProblem('offline');
  }
}

function json(body: unknown, headers: Headers): string | null {
  if (body === undefined) return null;
  headers.set('content-type', 'application/json');
  return JSON.stringify(body);
}

function multipart(file: Blob, fileName: string | undefined, meta: unknown): FormData {
  const form = new FormData();
  // Fields before the file, so that the office can judge it while it arrives.
  form.set('meta', JSON.stringify(meta ?? {}));
  form.set('file', file, fileName ?? (file instanceof File ? file.name : 'file'));
  return form;
}

async function readData<E extends Endpoint>(endpoint: E, response: Response): Promise<ResponseOf<E>> {
  if (endpoint.produces !== undefined) return (await response.blob()) as ResponseOf<E>;
  if (endpoint.response === null) return undefined as ResponseOf<E>;
  const raw: unknown = await response.json().catch(() => undefined);
  const parsed = endpoint.response.safeParse(raw);
  if (!parsed.success) {
    const issues = parsed.error.issues.map((issue) => ({ path: issue.path.join('.'), message: issue.message }));
    throw new ApiProblem('unreadableAnswer', { status: response.status, issues, detail: `${endpoint.id}: ${JSON.stringify(issues.slice(0, 3))}` });
  }
  return parsed.data as ResponseOf<E>;
}
