import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { DraftOperation, Revision } from '@yardfall/contracts';
import { memo, useDeferredValue, useMemo, useState, type ComponentProps, type ReactNode } from 'react';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { Answers } from './Answers.tsx';
import { BandRanking } from './BandRanking.tsx';
import { FindingsList } from './FindingsList.tsx';
import { PumpView } from './PumpView.tsx';
import { SectionDrawing } from './SectionDrawing.tsx';
import { StormView } from './StormView.tsx';
import { WaterNow } from './waterNow.ts';
import { WhatIfs } from './WhatIfs.tsx';
import { Workings } from './Workings.tsx';
import './designs.css';

interface RevisionReadingProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  /** SHA-256 of the whole evaluation; null while only a part of it is computed. */
  readonly mark: string | null;
  readonly revision: Revision;
  readonly edit: ((operations: readonly DraftOperation[]) => void) | null;
  readonly selected: string | null;
  readonly onSelect: (part: string | null) => void;
  readonly onLevel?: (part: string, field: string, level: number, done: boolean) => void;
  readonly children?: ReactNode;
}

/** Section, storm, findings and numbers of one revision; between them whatever the reader may change. */
export function RevisionReading({ document, evaluation, mark, revision, edit, selected, onSelect, onLevel, children }: RevisionReadingProps) {
  const peak = peakSample(evaluation);
  const [moment, setMoment] = useState<number | null>(null);
  const at = moment ?? peak;
  // The section follows the hand at once; what stands below it follows when there is time.
  const below = useDeferredValue(useMemo(() => (evaluation === null ? null : { document, evaluation }), [document, evaluation]));
  return (
    <div className="stack">
      <SectionDrawing jobId={revision.jobId} document={document} evaluation={evaluation} moment={at} selected={selected} onSelect={onSelect} {...(onLevel ? { onLevel } : {})} />
      <WaterNow value={evaluation?.results.storm?.pondLevel[at] ?? null}>{children}</WaterNow>
      {below ? (
        <Workings document={below.document} evaluation={below.evaluation}>
          <Findings document={below.document} findings={below.evaluation.findings} revision={revision} edit={edit} onSelect={onSelect} />
          <SteadyAnswers document={below.document} evaluation={below.evaluation} />
          <SteadyWhatIfs document={below.document} evaluation={below.evaluation} />
          <SteadyRanking document={below.document} evaluation={below.evaluation} />
          <SteadyStorm document={below.document} evaluation={below.evaluation} moment={at} onMoment={setMoment} />
          <SteadyPump document={below.document} evaluation={below.evaluation} />
          <Mark evaluation={below.evaluation} mark={mark} />
        </Workings>
      ) : null}
    </div>
  );
}

const SteadyAnswers = memo(Answers);
const SteadyWhatIfs = memo(WhatIfs);
const SteadyRanking = memo(BandRanking);
const SteadyStorm = memo(StormView);
const SteadyPump = memo(PumpView);

const Findings = memo((props: ComponentProps<typeof FindingsList>) => {
  const { t } = useText();
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.findings')}</Heading>
      <FindingsList {...props} />
    </section>
  );
});

/** Which methods computed this, that no engineer sealed it, and by what two sheets are known to hold the same numbers. */
function Mark({ evaluation, mark }: { readonly evaluation: Evaluation; readonly mark: string | null }) {
  const { t } = useText();
  return <p className="faint measure" data-results={mark}>{t('designs.notSealed', { version: evaluation.calcVersion })} {mark === null ? null : t('designs.mark', { mark: mark.slice(0, 12) })}</p>;
}

/** The moment with the highest pond: what a reader wants to see first. */
function peakSample(evaluation: Evaluation | null): number {
  const levels = evaluation?.results.storm?.pondLevel ?? [];
  return levels.reduce((best, level, at) => (level > (levels[best] ?? -Infinity) ? at : best), 0);
}
