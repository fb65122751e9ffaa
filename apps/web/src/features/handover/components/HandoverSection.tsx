import { holdPointText, type Job } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useBuildRevision } from '../../../hooks/useBuildRevision.ts';
import { useItemWords } from '../../../hooks/useItemWords.ts';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useChecklistForLevels, useHandover, useUsualWarranty } from '../api/handover.ts';
import { levelsAsked } from '../model/levels.ts';
import { HandoverForm } from './HandoverForm.tsx';
import { HandoverRecord } from './HandoverRecord.tsx';

/** What is still open before the handover, then the form, then the record. */
export function HandoverSection({ job }: { readonly job: Job }) {
  const { t, say } = useText();
  const { may } = useMe();
  const { data, error, isPending, refetch } = useHandover(job.id);
  const { document, pending } = useBuildRevision(job);
  const checklist = useChecklistForLevels(job);
  const step = useItemWords(job.id);
  const warrantyYears = useUsualWarranty(may('handover.complete'));
  // The office names hold point and step by their numbers; people read their words.
  const worded = (params: Readonly<Record<string, string | number>>) => ({
    ...params,
    ...(typeof params['holdPoint'] === 'string' ? { holdPoint: say(holdPointText(params['holdPoint'])) } : {}), ...(typeof params['item'] === 'string' ? { item: step(params['item']) } : {}),
  });
  if (isPending || pending) return <Loading what={t('handover.loading')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const { handover, open } = data.data;
  if (handover !== null) return <HandoverRecord handover={handover} timeZone={job.timeZone} document={document} />;
  if (open.length > 0) {
    const line = (one: (typeof open)[number]) => <li key={JSON.stringify(one)}>{say(one.code, worded(one.params), { timeZone: job.timeZone })}</li>;
    const isStep = ({ code }: (typeof open)[number]) => code === 'handover.open.step';
    const [steps, others] = [open.filter(isStep), open.filter((one) => !isStep(one))];
    return (
      <Notice title={t('handover.openTitle')}>
        <ul className="handover-open">{others.map(line)}</ul>
        {steps.length === 0 ? null : <details><summary>{t('handover.steps', { n: steps.length })}</summary><ul className="handover-open">{steps.map(line)}</ul></details>}
        {may('handover.complete') ? <p className="faint measure">{t('handover.lastPayment')}</p> : null}
      </Notice>
    );
  }
  if (!may('handover.complete')) return <p>{t('handover.officeHandsOver')}</p>;
  if (warrantyYears === null) return <Loading what={t('handover.loading')} />;
  return document === null ? null : <HandoverForm job={job} levels={levelsAsked(document, checklist)} warrantyYears={warrantyYears} />;
}
