import type { Study } from '@yardfall/contracts';
import { Button } from '../../../../components/Button.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { useStopStudy } from '../../api/studies.ts';

/** A study on its way: what it does, how far it is, and the way to stop it. */
export function StudyLine({ study }: { readonly study: Study }) {
  const { t, q } = useText();
  const { write, busy, problem } = useStopStudy();
  const words = study.status === 'waiting' ? t('studies.waiting') : t(`studies.doing.${study.kind}`, { share: study.progress });
  return (
    <div className="stack">
      <div className="row study-line">
        <label>
          <span>{words}</span>
          <progress max={1} value={study.progress} aria-valuetext={q('percent', study.progress)} />
        </label>
        <Button busy={busy} onClick={() => write({ params: { jobId: study.jobId, studyId: study.id }, body: {} })}>{t('studies.stop')}</Button>
      </div>
      <ProblemNotice problem={problem} />
    </div>
  );
}
