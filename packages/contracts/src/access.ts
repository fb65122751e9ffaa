/** Roles a member of a company may hold (several at once), the customer who came by a link, and whoever came by a link that only takes photos. */
export const memberRoles = ['owner', 'estimator', 'crew'] as const;
export type MemberRole = (typeof memberRoles)[number];
export type Role = MemberRole | 'customer' | 'sender';

const owner = ['owner'] as const;
const office = ['owner', 'estimator'] as const;
const team = ['owner', 'estimator', 'crew'] as const;
const customer = ['customer'] as const;
const sender = ['sender'] as const;

/**
 * The one table of who may do what. The guard, the services and the web client read it.
 * Which rows an actor sees (a crew member only the jobs they are on) is part of each query.
 */
export const permissions = {
  'company.read': team,
  'company.manage': owner,
  'members.read': team,
  'members.manage': owner,
  'jobs.read': team,
  'jobs.create': office,
  'jobs.edit': office,
  'jobs.assign': owner,
  'jobs.release': owner,
  'surveys.read': team,
  'surveys.edit': office,
  'surveys.record': team,
  'rain.read': team,
  'rain.edit': office,
  'designs.read': team,
  'designs.edit': office,
  'designs.issue': office,
  'evaluate.run': team,
  'library.read': team,
  'library.edit': office,
  'studies.read': office,
  'studies.run': office,
  'prices.read': office,
  'prices.edit': office,
  'offers.read': office,
  'offers.send': office,
  'permits.read': team,
  'permits.edit': office,
  'locates.read': team,
  'locates.edit': team,
  'checklists.read': team,
  'checklists.record': team,
  'checklists.waive': owner,
  'photos.read': team,
  'photos.add': team,
  'findings.read': team,
  'findings.report': team,
  'findings.answer': office,
  'proof.read': team,
  'proof.record': team,
  'handover.read': team,
  'handover.complete': office,
  'audit.read': office,
  'events.read': team,
  'devices.manage': owner,
  'sending.manage': office,
  'sending.send': sender,
  'portal.read': customer,
  'portal.answer': customer,
} satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof permissions;

export function may(roles: readonly Role[], permission: Permission): boolean {
  const allowed: readonly Role[] = permissions[permission];
  return roles.some((role) => allowed.includes(role));
}
