import { RequestMethod, type Type } from '@nestjs/common';
import { METHOD_METADATA } from '@nestjs/common/constants.js';
import { DiscoveryService, MetadataScanner } from '@nestjs/core';
import type { Endpoint } from '@yardfall/contracts';
import { z } from 'zod';
import { ENDPOINT } from './route.ts';

/** Every handler that Nest has registered, with its contract. */
export function registeredRoutes(discovery: DiscoveryService, scanner: MetadataScanner): { handler: string; method: string; endpoint: Endpoint | undefined }[] {
  return discovery.getControllers().flatMap((wrapper) => {
    const type = wrapper.metatype as Type<unknown>;
    const prototype = type.prototype as Record<string, object>;
    return scanner.getAllMethodNames(prototype).flatMap((name) => {
      const handler = prototype[name];
      if (handler === undefined) return [];
      const method = Reflect.getMetadata(METHOD_METADATA, handler) as RequestMethod | undefined;
      if (method === undefined) return [];
      return [{ handler: `${type.name}.${name}`, method: RequestMethod[method] ?? '', endpoint: Reflect.getMetadata(ENDPOINT, handler) as Endpoint | undefined }];
    });
  });
}

/** Keeps the service from starting with an open door or a contract that cannot be kept. */
export function checkRoutes(routes: ReturnType<typeof registeredRoutes>): void {
  const seen = new Map<string, string>();
  for (const { handler, endpoint } of routes) {
    if (endpoint === undefined) throw new Error(`${handler} has no contract: bind it with @Route`);
    const place = `${endpoint.method} ${endpoint.fullPath}`;
    const other = seen.get(place) ?? seen.get(endpoint.id);
    if (other !== undefined) throw new Error(`${handler} and ${other} both answer ${place} or ${endpoint.id}`);
    seen.set(place, handler).set(endpoint.id, handler);
    if (endpoint.concurrency !== undefined && !(endpoint.response instanceof z.ZodObject && 'version' in endpoint.response.shape)) {
      throw new Error(`${endpoint.id} promises an ETag, but its answer has no version`);
    }
  }
}
