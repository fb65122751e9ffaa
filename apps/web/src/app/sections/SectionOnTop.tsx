import { useCallback, useState } from 'react';
import { PartsDrawing } from '../../components/PartsDrawing.tsx';
import { PartSteps, usePartStates } from '../../features/checklists/index.ts';
import { JobDrawing } from '../../features/designs/index.ts';
import { useText } from '../../lib/reader.tsx';
import { useMe } from '../../hooks/useMe.ts';
import type { JobSectionProps } from '../jobSections.tsx';
import { drawingHeight } from './HomeDrawing.tsx';
import { partsWords, PartsWords } from './PartsWords.tsx';
import './CrewTop.css';

/** The section of the job; whoever builds it sees what is built, next and held, and opens the steps of a part by pressing it. */
export function SectionOnTop({ job }: JobSectionProps) {
  const { may } = useMe();
  return may('checklists.record') && job.buildRevisionId !== null && job.stage !== 'handedOver' ? <CrewSection job={job} /> : <JobDrawing job={job} />;
}

function CrewSection({ job }: Pick<JobSectionProps, 'job'>) {
  const parts = usePartStates(job.id, true);
  const text = useText();
  const [pressed, setPressed] = useState<string | null>(null);
  const [whole, setWhole] = useState(false);
  const press = useCallback((part: string) => setPressed(part), []);
  return (
    <div className="stack">
      {parts === null ? null : <PartsDrawing job={job} states={parts.states} title={text.t('checklists.parts.drawing', { words: partsWords(text, parts).join(' ') })} height={drawingHeight} onSelect={press} names={parts.names} />}
      {parts === null ? null : <p className="home-parts faint"><PartsWords parts={parts} /></p>}
      <details className="whole-section" onToggle={(event) => setWhole(event.currentTarget.open)}>
        <summary>{text.t('checklists.parts.whole')}</summary>
        {whole ? <JobDrawing job={job} states={parts?.states ?? null} onSelect={press} /> : null}
      </details>
      <PartSteps jobId={job.id} part={pressed} onClose={() => setPressed(null)} />
    </div>
  );
}
