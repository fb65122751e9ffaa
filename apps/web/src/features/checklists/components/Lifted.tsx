import { holdPointRules } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** Who lifts the taped grate again says so: then it is taped, photographed and ticked anew before anything is poured. */
export function Lifted({ list, view, record }: EvidenceProps) {
  const { t } = useText();
  const { requirement, template, part } = view.item;
  if (requirement.freshFor === null || factsOf(view, 'photo').length === 0 || view.state === 'open') return null;
  const guarded = holdPointRules.filter(({ items }) => items.includes(template)).flatMap(({ guards }) => guards);
  if (list.items.some((one) => guarded.includes(one.item.template) && one.item.part === part && one.begun)) return null;
  return <Button size="crew" wide disabled={record.busy} onClick={() => record.record([{ kind: 'lifted' }])}>{t('checklists.way.lifted')}</Button>;
}
