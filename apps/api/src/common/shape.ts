import type { Endpoint } from '@yardfall/contracts';

/** What leaves the service is what the contract names, and nothing beside it. A value that the contract refuses is our mistake. */
export function shape(endpoint: Endpoint, answer: unknown): unknown {
  if (endpoint.response === null) return undefined;
  const result = endpoint.response.safeParse(answer);
  if (result.success) return result.data;
  const fields = result.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
  throw new Error(`${endpoint.id} answered what its contract refuses: ${fields.join('; ')}`);
}
