import type { Language, Me, Member, MemberRole, UnitSystem } from '@yardfall/contracts';
import type { Company as CompanyRow, Customer as CustomerRow, Member as MemberRow } from '../generated/prisma/client.ts';

function companyOf(row: CompanyRow): Me['company'] {
  return { id: row.id, name: row.name, language: row.language as Language, state: row.state, timeZone: row.timeZone };
}

export function presentMe(company: CompanyRow, member: MemberRow): Me {
  return {
    kind: 'member', id: member.id, name: member.name, company: companyOf(company), roles: member.roles as MemberRole[], jobId: null,
    language: member.language as Language, units: member.units as UnitSystem, theme: member.theme as Me['theme'],
  };
}

/** The name of a customer is sealed; their page shows it from the offer, not from here. */
export function presentVisitor(company: CompanyRow, customer: CustomerRow, jobId: string | null): Me {
  return {
    kind: 'customer', id: customer.id, name: '', company: companyOf(company), roles: ['customer'], jobId, language: customer.language as Language, units: 'us', theme: 'auto',
  };
}

export function presentMember(row: MemberRow): Member {
  return { id: row.id, name: row.name, email: row.email, roles: row.roles as MemberRole[], active: row.active, invited: row.passwordHash === null };
}
