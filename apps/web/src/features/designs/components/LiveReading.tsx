import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { setLevel } from '@yardfall/drawing';
import { useState, type ReactNode } from 'react';
import type { Draft } from '../hooks/useDraft.ts';
import { useEvaluation } from '../../../hooks/useEvaluation.ts';
import { levelOperations } from '../model/levelOperations.ts';
import { DraftLine } from './DraftLine.tsx';
import { RevisionReading } from './RevisionReading.tsx';

interface LiveReadingProps {
  readonly draft: Draft;
  readonly revision: Revision;
  readonly selected: string | null;
  readonly onSelect: (part: string | null) => void;
  readonly children: ReactNode;
}

/** A draft and the numbers that follow every edit. What moves with a dragged level is here, so that the rest of the page stands still meanwhile. */
export function LiveReading({ draft, revision, selected, onSelect, children }: LiveReadingProps) {
  /** The document while a level is under the hand; the draft follows when it lets go. */
  const [dragged, setDragged] = useState<DesignDocument | null>(null);
  const document = dragged ?? draft.document;
  const { evaluation, sha256, problem } = useEvaluation(document, revision.evaluation as Evaluation | null, revision.evaluationSha256);
  const moveLevel = (part: string, field: string, level: number, done: boolean) => {
    const next = setLevel(draft.document, part, field, level);
    setDragged(done ? null : next);
    if (done) draft.edit(levelOperations(draft.document, next));
  };
  return (
    <>
      <DraftLine draft={draft} problem={problem} />
      <RevisionReading document={document} evaluation={evaluation} mark={sha256} revision={revision} edit={draft.edit} selected={selected} onSelect={onSelect} onLevel={moveLevel}>{children}</RevisionReading>
    </>
  );
}
