import { Page } from '../../components/Page.tsx';
import { CompanyRecord, Members } from '../../features/company/index.ts';
import { Library } from '../../features/library/index.ts';
import { GasRules, RuleSets } from '../../features/locates/index.ts';
import { useMe } from '../../hooks/useMe.ts';
import { useText } from '../../lib/reader.tsx';

export function CompanyPage() {
  const { t } = useText();
  const { me } = useMe();
  return <Page title={me?.company.name ?? t('identity.company')} lead={t('identity.company.lead')}><Members /><CompanyRecord /><RuleSets /><GasRules /><Library /></Page>;
}
