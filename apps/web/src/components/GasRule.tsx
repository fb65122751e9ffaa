import { gasRules } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';
import { useText } from '../lib/reader.tsx';
import { Notice } from './Notice.tsx';
import './GasRule.css';

/** What the gas companies of this contractor told to do with a running engine, beside the built-in words and never in their place. */
export function GasRule() {
  const { t } = useText();
  const { data, isPending } = useQuery({ ...read(gasRules.list, {}), retry: false });
  if (isPending) return null;
  const inForce = data?.data.items.filter((rule) => rule.inForce) ?? null;
  if (inForce === null || inForce.length === 0) return <Notice severity="caution"><p>{t(inForce === null ? 'ui.gasRule.notHere' : 'ui.gasRule.none')}</p></Notice>;
  return inForce.map(({ id, gasCompany, rule, source, readOn, by, at }) => (
    <Notice key={id} severity="caution" title={t('ui.gasRule.of', { gasCompany })}>
      <p className="gas-rule">{rule}</p>
      <p className="faint">{t('ui.gasRule.source', { source, readOn, by, at })}</p>
      <p className="faint">{t('ui.gasRule.beside')}</p>
    </Notice>
  ));
}
