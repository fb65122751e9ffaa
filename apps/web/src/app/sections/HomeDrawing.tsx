import type { JobRow } from '@yardfall/contracts';
import { usePartStates } from '../../features/checklists/index.ts';
import { PartsDrawing } from '../../components/PartsDrawing.tsx';
import { useText } from '../../lib/reader.tsx';
import { partsWords, PartsWords } from './PartsWords.tsx';
import './CrewTop.css';

/** Room that the home keeps for the drawing before it is there [px]. */
export const drawingHeight = 140;

/** What is built, next and held, as the section of this job's own design. */
export function HomeDrawing({ job }: { readonly job: JobRow }) {
  const text = useText();
  const parts = usePartStates(job.id, job.buildRevisionId !== null);
  if (parts === null) return null;
  return (
    <>
      <PartsDrawing job={job} states={parts.states} title={text.t('checklists.parts.drawing', { words: partsWords(text, parts).join(' ') })} height={drawingHeight} />
      <p className="home-parts faint" aria-hidden="true"><PartsWords parts={parts} /></p>
    </>
  );
}
