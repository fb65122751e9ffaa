import type { INestApplicationContext } from '@nestjs/common';
import type { MemberRole } from '@yardfall/contracts';
import { type Actor, memberActor, quietRequest } from '../common/actor.ts';
import { LinksService } from '../identity/links.service.ts';
import { MembersService } from '../identity/members.service.ts';
import { SetUpService } from '../identity/setUp.service.ts';

/** The people of the demo company are invented; so are their addresses. */
export const demoPassword = 'tern-hollow-demo';
export const company = { name: 'Yardfall Demo Drainage', phone: '(919) 555-0117', state: 'NC', timeZone: 'America/New_York' };
export const people = {
  owner: { name: 'Ines Calloway', email: 'ines.calloway@demo.example', roles: ['owner'] },
  estimator: { name: 'Theo Marsh', email: 'theo.marsh@demo.example', roles: ['estimator'] },
  crew: { name: 'Rosa Delgado', email: 'rosa.delgado@demo.example', roles: ['crew'] },
} as const satisfies Record<string, { name: string; email: string; roles: readonly MemberRole[] }>;
export type Part = keyof typeof people;

export type Someone = { readonly id: string; readonly companyId: string; readonly roles: readonly MemberRole[] };

/** The demo company with its people, each able to act at any moment of the story. */
export interface Cast {
  readonly app: INestApplicationContext;
  readonly members: Readonly<Record<Part, Someone>>;
  /** The present; the story is told in days before it. */
  readonly now: Date;
}

const day = 86_400_000;

/** A person of the demo company, so many days ago at an hour of the day (UTC), plus minutes. */
export function act({ members, now }: Cast, who: Part, daysAgo: number, hour = 14, minutes = 0): Actor {
  const midnight = Math.floor(now.getTime() / day) * day;
  const at = new Date(Math.min(midnight - daysAgo * day + hour * 3_600_000 + minutes * 60_000, now.getTime()));
  return memberActor(members[who], at, `demo-${String(daysAgo)}`);
}

/** Sets the company up by its one-time link and invites the others, as an owner would. */
export async function gatherCast(app: INestApplicationContext, now: Date, daysAgo: number): Promise<Cast> {
  const caller = { ...quietRequest('demo-start', new Date(now.getTime() - daysAgo * day)) };
  const link = await app.get(SetUpService).offerLink();
  if (link === null) throw new Error('the demo company needs an installation without any');
  const { name: companyName, ...place } = company;
  const opened = await app.get(SetUpService).setUp(caller, { token: tokenOf(link), companyName, ...place, ownerName: people.owner.name, email: people.owner.email, password: demoPassword });
  const owner: Someone = { id: opened.me.id, companyId: opened.me.company.id, roles: people.owner.roles };
  const join = async (who: 'estimator' | 'crew'): Promise<Someone> => {
    const { name, email, roles } = people[who];
    const invited = await app.get(MembersService).invite(memberActor(owner, caller.at, caller.id), { name, email, roles: [...roles] });
    await app.get(LinksService).redeemInvitation(caller, tokenOf(invited.link), demoPassword);
    return { id: invited.member.id, companyId: owner.companyId, roles };
  };
  return { app, now, members: { owner, estimator: await join('estimator'), crew: await join('crew') } };
}

export function tokenOf(link: string): string {
  return link.split('#')[1] ?? '';
}
