import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { useEvaluation } from '../../../hooks/useEvaluation.ts';
import { useText } from '../../../lib/reader.tsx';
import { roomBeside } from '../model/profile.ts';

interface ProfileAsBuiltProps {
  readonly document: DesignDocument;
  readonly designed: Evaluation | null;
  readonly built: DesignDocument;
}

/** The room that is left below the sills, computed on this phone from the pipe as it was shot. */
export function ProfileAsBuilt({ document, designed, built }: ProfileAsBuiltProps) {
  const { t, say } = useText();
  const { evaluation, sha256, problem } = useEvaluation(built, null, null);
  const rooms = roomBeside(document, designed, evaluation);
  return (
    <div className="stack" data-results={sha256 ?? ''}>
      {problem ? <p className="field-error">{say(problem.code, problem.params)}</p> : null}
      {rooms.map(({ sill, years, built: now, designed: before }) => (
        <p key={sill} className={now < before - noticed ? 'verdict verdict-off' : ''}>
          {now < before - noticed ? <FindingMark severity={now < 0 ? 'stop' : 'caution'} wordUnseen /> : null}
          {now < 0 ? t('checklists.profile.over', { years, sill, over: -now, designed: before }) : t('checklists.profile.room', { years, sill, built: now, designed: before })}
        </p>
      ))}
    </div>
  );
}

/** A loss of room that a person would speak of [m]: a sixteenth of an inch. */
const noticed = 0.0254 / 16;
