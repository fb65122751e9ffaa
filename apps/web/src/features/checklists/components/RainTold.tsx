import { Button } from '../../../components/Button.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useItemRecord } from '../api/useItemRecord.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

/** It rained: one press, and the trench is looked at again before anybody goes in. */
export function RainTold({ list, view }: { readonly list: ChecklistView; readonly view: ItemView }) {
  const { t } = useText();
  const record = useItemRecord(list, view);
  return (
    <>
      <Button size="crew" wide disabled={record.busy} onClick={() => record.record([{ kind: 'rained' }])}>{t('checklists.way.rained')}</Button>
      <KeepProblem problem={record.problem} />
    </>
  );
}
