import { useState } from 'react';
import { useMe } from '../../../hooks/useMe.ts';
import { forget, keep, kept } from '../../../lib/keep.ts';
import { draftFrom, isUntyped, nothingTyped, type StepDraft } from '../model/draft.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';

export interface Typing {
  readonly draft: StepDraft;
  readonly change: (part: Partial<StepDraft>) => void;
  readonly clear: () => void;
}

/** What is typed at a step stays on this phone until it is recorded: a page that is closed meanwhile loses no figure. */
export function useStepDraft({ jobId }: Pick<ChecklistView, 'jobId'>, { item }: ItemView): Typing {
  const memberId = useMe().me?.id ?? '';
  const name = `step.${memberId}.${jobId}.${item.key}.${item.requirementHash.slice(0, 12)}`;
  const [draft, setDraft] = useState(() => draftFrom(kept(name)));
  const set = (next: StepDraft) => {
    setDraft(next);
    if (isUntyped(next)) forget(name);
    else keep(name, next);
  };
  return { draft, change: (part) => set({ ...draft, ...part }), clear: () => set(nothingTyped) };
}
