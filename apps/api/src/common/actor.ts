import type { Endpoint, Language, Role, UnitSystem } from '@yardfall/contracts';

/** What is known about a request before anybody is known. */
export interface RequestInfo {
  readonly id: string;
  readonly at: Date;
  readonly language: Language;
  readonly ip: string;
  readonly userAgent: string;
  /** Scheme and host that the caller used: links are built on it. */
  readonly origin: string;
  readonly endpoint: Endpoint | null;
  readonly ifMatch: string | null;
  /** Set when the request carries an Idempotency-Key; Database.write claims it. */
  readonly idempotency: IdempotencyClaim | null;
}

export interface IdempotencyClaim {
  readonly key: string;
  readonly bodySha256: string;
  claimed: boolean;
}

/** Who acts: handed explicitly from the controller to every service. */
export interface Actor {
  /** `sender`: whoever came by a link that only takes photos; the id is the link's. */
  readonly kind: 'member' | 'customer' | 'sender' | 'system';
  readonly id: string;
  readonly companyId: string;
  readonly roles: readonly Role[];
  /** The one job of a customer or sender. */
  readonly jobId: string | null;
  readonly language: Language;
  readonly units: UnitSystem;
  readonly sessionId: string | null;
  /** The phone was lost and cut off: it reads nothing, and what it recorded is quarantined. */
  readonly cutOff?: boolean;
  readonly request: RequestInfo;
}

export function quietRequest(id: string, at: Date): RequestInfo {
  return { id, at, language: 'en', ip: '', userAgent: '', origin: '', endpoint: null, ifMatch: null, idempotency: null };
}

const nobody = '00000000-0000-0000-0000-000000000000';

/** For tasks of the queue: acts inside one company and through its row policies. */
export function systemActor(companyId: string, requestId: string, at: Date): Actor {
  const request = quietRequest(requestId, at);
  return { kind: 'system', id: nobody, companyId, roles: [], jobId: null, language: 'en', units: 'us', sessionId: null, request };
}

/** For the seed, which uses the services as the people of the demo company would. */
export function memberActor(member: { id: string; companyId: string; roles: readonly Role[] }, at: Date, requestId = 'seed'): Actor {
  const request = quietRequest(requestId, at);
  return { kind: 'member', ...member, jobId: null, language: 'en', units: 'us', sessionId: null, request };
}
