import { audit } from './audit.ts';
import { company } from './company.ts';
import type { Endpoint } from './endpoint.ts';
import { identity } from './identity.ts';
import { notices } from './notices.ts';
import { service } from './service.ts';

/** Every feature with its endpoints: a new feature is added here, and the OpenAPI document and the tests know it. */
export const features = { service, identity, company, audit, notices } satisfies Record<string, Record<string, Endpoint>>;

export const allEndpoints: readonly Endpoint[] = Object.values(features).flatMap((feature): Endpoint[] => Object.values(feature));
