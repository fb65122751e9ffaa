import type { z } from 'zod';
import type { Permission } from './access.ts';
import type { ErrorCode } from './problem.ts';

/**
 * Who may call an endpoint: anybody (with the reason why), anyone signed in, or the holders of a permission.
 * There is no default: an endpoint without `access` does not compile.
 */
export type Access = { readonly public: string } | { readonly session: true } | { readonly permission: Permission };

export type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE' | 'OPTIONS';

/** The request of the resumable upload protocol (tus 1.0.0) that an endpoint answers. Its `body` comes from the protocol's headers. */
export type TusStep = 'capabilities' | 'creation' | 'state' | 'append' | 'termination';

type Shape = z.ZodType | null;

export interface EndpointOptions<P extends Shape, Q extends Shape, B extends Shape, R extends Shape> {
  /** feature.action, unique. */
  readonly id: string;
  readonly method: Method;
  /** Under /api/v1, with `:name` parameters. */
  readonly path: string;
  readonly summary: string;
  readonly access: Access;
  readonly status: 200 | 201 | 202 | 204;
  readonly params: P;
  readonly query: Q;
  readonly body: B;
  readonly response: R;
  /** `etag`: the answer carries an ETag; `ifMatch`: the request must carry If-Match as well. */
  readonly concurrency?: 'etag' | 'ifMatch';
  /** What a body that is not JSON is: a photo or a text file sent as multipart with one file and a JSON field `meta`. */
  readonly upload?: { readonly maxBytes: number; readonly types: readonly string[] };
  /** `state` answers HEAD as well, as every GET does; the bytes of `append` are a stream that nobody holds in memory. */
  readonly tus?: TusStep;
  /** Largest JSON body in bytes; 1 MiB unless said. */
  readonly maxBody?: number;
  /** Set on answers that are not JSON. */
  readonly produces?: string;
  /** Writes that change nothing twice by nature may do without an Idempotency-Key. */
  readonly idempotency?: 'none';
  /** A phone that was cut off may still call it: it only takes what was recorded, and tells nothing. */
  readonly fromCutOff?: true;
  readonly errors?: readonly ErrorCode[];
}

export interface Endpoint<P extends Shape = Shape, Q extends Shape = Shape, B extends Shape = Shape, R extends Shape = Shape>
  extends EndpointOptions<P, Q, B, R> {
  readonly fullPath: string;
}

export const apiRoot = '/api/v1';

/** The one description of an endpoint: the API binds to it, the client calls it, OpenAPI and the tests are made from it. */
export function endpoint<P extends Shape, Q extends Shape, B extends Shape, R extends Shape>(
  options: EndpointOptions<P, Q, B, R>,
): Endpoint<P, Q, B, R> {
  return { ...options, fullPath: apiRoot + options.path };
}

/** The address of an endpoint with its parameters filled in. */
export function pathOf(endpoint: Endpoint, params: Readonly<Record<string, string>>): string {
  return Object.entries(params).reduce((at, [name, value]) => at.replace(`:${name}`, encodeURIComponent(value)), endpoint.fullPath);
}

type Out<S extends Shape> = S extends z.ZodType ? z.output<S> : undefined;
type In<S extends Shape> = S extends z.ZodType ? z.input<S> : undefined;

export type ParamsOf<E extends Endpoint> = Out<E['params']>;
export type QueryOf<E extends Endpoint> = Out<E['query']>;
export type BodyOf<E extends Endpoint> = Out<E['body']>;
export type ResponseOf<E extends Endpoint> = Out<E['response']>;
/** What a caller sends: defaults not yet filled in. */
export type QueryInput<E extends Endpoint> = In<E['query']>;
export type BodyInput<E extends Endpoint> = In<E['body']>;

/** What a controller method receives. */
export interface InputOf<E extends Endpoint> {
  readonly params: ParamsOf<E>;
  readonly query: QueryOf<E>;
  readonly body: BodyOf<E>;
}
