import { applyDecorators, createParamDecorator, type ExecutionContext, HttpCode, RequestMapping, RequestMethod, SetMetadata } from '@nestjs/common';
import type { Endpoint } from '@yardfall/contracts';
import type { Request } from 'express';
import type { z } from 'zod';
import { contextOf } from './request.ts';

export const ENDPOINT = 'yardfall:endpoint';

type Answer<E extends Endpoint> = E['response'] extends z.ZodType ? z.input<E['response']> : unknown;
type Handler<E extends Endpoint> = (...args: never[]) => Promise<Answer<E>> | Answer<E>;
type Binding<E extends Endpoint> = <T extends Handler<E>>(target: object, key: string | symbol, descriptor: TypedPropertyDescriptor<T>) => void;

/**
 * Binds a controller method to its contract: method, path, status, permission, validation and the shape of the answer.
 * A handler without it keeps the service from starting.
 */
export function Route<E extends Endpoint>(endpoint: E): Binding<E> {
  return applyDecorators(
    SetMetadata(ENDPOINT, endpoint),
    RequestMapping({ path: endpoint.fullPath, method: RequestMethod[endpoint.method] }),
    HttpCode(endpoint.status),
  ) as Binding<E>;
}

const contextOfExecution = (execution: ExecutionContext) => contextOf(execution.switchToHttp().getRequest<Request>());

/** The validated input: `@Input() input: InputOf<typeof feature.action>`. */
export const Input = createParamDecorator((_: unknown, execution: ExecutionContext) => contextOfExecution(execution).input);

/** The actor of a route that is not public. */
export const Who = createParamDecorator((_: unknown, execution: ExecutionContext) => {
  const { actor } = contextOfExecution(execution);
  if (actor === null) throw new Error('a public route has no actor');
  return actor;
});

/** What is known of the caller of a public route. */
export const Caller = createParamDecorator((_: unknown, execution: ExecutionContext) => contextOfExecution(execution).info);

/** The one file of an upload endpoint. */
export const File = createParamDecorator((_: unknown, execution: ExecutionContext) => {
  const { file } = contextOfExecution(execution);
  if (file === null) throw new Error('the endpoint takes no file');
  return file;
});
