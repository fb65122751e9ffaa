import type { Company } from '@yardfall/contracts';
import type { Row } from '../../../components/Table.tsx';
import type { Text } from '../../../lib/reader.tsx';

export function companyRows({ responsibleName, state, timeZone, settings }: Company, { t, q }: Text): Row[] {
  const rows = [
    ['responsibleName', responsibleName],
    ['place', `${state}, ${timeZone}`],
    ['handDig', q('height', settings.handDigTolerance)],
    ['warranty', q('count', settings.warrantyMonths)],
    ['invitation', q('count', settings.invitationDays)],
    ['customerLink', q('count', settings.customerLinkDays)],
  ] as const;
  return rows.map(([key, value]) => ({ key, cells: { what: t(`identity.settings.${key}`), value } }));
}
