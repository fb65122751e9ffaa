import type { Company, Language } from '@yardfall/contracts';
import type { Company as CompanyRow } from '../generated/prisma/client.ts';
import { readSettings } from './company.rules.ts';

export function presentCompany(row: CompanyRow): Company {
  return {
    id: row.id, name: row.name, language: row.language as Language, timeZone: row.timeZone, state: row.state, responsibleName: row.responsibleName, phone: row.phone,
    settings: readSettings(row.settings), version: row.version,
  };
}
