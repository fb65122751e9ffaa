import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useBegin } from '../api/checklists.ts';
import type { ItemRecord } from '../api/useItemRecord.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

interface StartWorkProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly record: ItemRecord;
}

/**
 * The office is asked before guarded work begins; without a signal the beginning is kept on the phone and judged later. While something of this list is still on its way the office
 * cannot know what opened the work: then the beginning goes the same way after it.
 */
export function StartWork({ list, view, record }: StartWorkProps) {
  const { t } = useText();
  const [kept, setKept] = useState(false);
  const { write, busy, problem } = useBegin(() => undefined);
  const held = view.heldBy.length > 0;
  const refused = problem instanceof ApiProblem && problem.passing ? null : problem;
  const isOnItsWay = list.items.some(({ waiting }) => waiting.length > 0);
  const keep = () => {
    setKept(true);
    record.record([{ kind: 'begun' }]);
  };
  const keepWithoutSignal = (error: unknown) => {
    if (error instanceof ApiProblem && error.passing) keep();
  };
  const press = () => {
    if (isOnItsWay) keep();
    else write({ params: { jobId: list.jobId, itemKey: view.item.key }, body: {} }, { onError: keepWithoutSignal });
  };
  return (
    <div className="stack">
      <Button kind="main" size="crew" wide busy={busy} disabled={held || view.stops.length > 0 || busy || kept} onClick={press}>
        {t(view.item.template === 'I3' ? 'checklists.startPour' : 'checklists.start')}
      </Button>
      <ProblemNotice problem={refused} />
    </div>
  );
}
