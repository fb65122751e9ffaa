import type { Company } from '@yardfall/contracts';
import type { Row } from '../../../components/Table.tsx';
import type { Text } from '../../../lib/reader.tsx';

export function companyRows({ responsibleName, phone, state, timeZone, settings }: Company, { t, q }: Text): Row[] {
  const rows = [
    ['responsibleName', responsibleName],
    ['phone', phone],
    ['place', `${state}, ${timeZone}`],
    ['handDig', q('height', settings.handDigTolerance)],
    ['warranty', `${q('count', settings.warrantyMonths)} ${t('identity.settings.months')}`],
    ['invitation', `${q('count', settings.invitationDays)} ${t('identity.settings.days')}`],
    ['customerLink', `${q('count', settings.customerLinkDays)} ${t('identity.settings.days')}`],
  ] as const;
  return rows.map(([key, value]) => ({ key, cells: { what: t(`identity.settings.${key}`), value } }));
}
