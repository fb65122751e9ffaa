import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { DraftOperation, Revision } from '@yardfall/contracts';
import { useState, type ReactNode } from 'react';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { Answers } from './Answers.tsx';
import { BandRanking } from './BandRanking.tsx';
import { FindingsList } from './FindingsList.tsx';
import { SectionDrawing } from './SectionDrawing.tsx';
import { PumpView, StormView } from './StormView.tsx';
import { WhatIfs } from './WhatIfs.tsx';
import { Workings } from './Workings.tsx';
import './designs.css';

interface RevisionReadingProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  readonly revision: Revision;
  readonly edit: ((operations: readonly DraftOperation[]) => void) | null;
  readonly selected: string | null;
  readonly onSelect: (part: string | null) => void;
  readonly onLevel?: (part: string, field: string, level: number, done: boolean) => void;
  readonly children?: ReactNode;
}

/** Section, storm, findings and numbers of one revision; between them whatever the reader may change. */
export function RevisionReading({ document, evaluation, revision, edit, selected, onSelect, onLevel, children }: RevisionReadingProps) {
  const { t } = useText();
  const peak = peakSample(evaluation);
  const [moment, setMoment] = useState<number | null>(null);
  const at = moment ?? peak;
  return (
    <div className="stack">
      <SectionDrawing document={document} evaluation={evaluation} moment={at} selected={selected} onSelect={onSelect} {...(onLevel ? { onLevel } : {})} />
      {children}
      {evaluation ? (
        <Workings document={document} evaluation={evaluation}>
          <section className="stack">
            <Heading level={3}>{t('designs.findings')}</Heading>
            <FindingsList document={document} findings={evaluation.findings} revision={revision} edit={edit} onSelect={onSelect} />
          </section>
          <Answers document={document} evaluation={evaluation} />
          <WhatIfs document={document} evaluation={evaluation} />
          <BandRanking document={document} evaluation={evaluation} />
          <StormView document={document} evaluation={evaluation} moment={at} onMoment={setMoment} />
          <PumpView evaluation={evaluation} />
          <p className="faint measure">{t('designs.notSealed', { version: evaluation.calcVersion })}</p>
        </Workings>
      ) : null}
    </div>
  );
}

/** The moment with the highest pond: what a reader wants to see first. */
function peakSample(evaluation: Evaluation | null): number {
  const levels = evaluation?.results.storm?.pondLevel ?? [];
  return levels.reduce((best, level, at) => (level > (levels[best] ?? -Infinity) ? at : best), 0);
}
