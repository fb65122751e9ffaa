import { Button } from '../../../components/Button.tsx';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

export function TickEvidence({ view, record, allowed }: EvidenceProps & { readonly allowed: boolean }) {
  const { t } = useText();
  if (factsOf(view, 'ticked').length > 0 && !view.missing.includes('tick')) return <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{t('checklists.ticked')}</p>;
  if (!allowed) return <p>{t('checklists.officeTicks')}</p>;
  return <Button kind="main" size="crew" wide disabled={record.busy} onClick={() => record.record({ kind: 'ticked', note: '' })}>{t('checklists.tick')}</Button>;
}
