import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useBuildRevision } from '../../../hooks/useBuildRevision.ts';
import { useMe } from '../../../hooks/useMe.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { useProofTests } from '../api/proof.ts';
import { pumpsIn } from '../model/runs.ts';
import { Here } from './Here.tsx';
import { PumpDownForm } from './PumpDownForm.tsx';
import { Result } from './Result.tsx';
import './proof.css';

/** The pump-down: what the pump moves against what was promised. */
export function ProofSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending, refetch } = useProofTests(job.id);
  const { document, evaluation, pending } = useBuildRevision(job);
  const [adding, setAdding] = useState(false);
  const here = useOutbox().filter((entry) => entry.kind === 'proof' && entry.jobId === job.id && entry.refused === null);
  if (isPending || pending) return <Loading what={t('proof.loading')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const pumps = pumpsIn(document);
  if (document === null) return <Empty what={t('proof.title')} why={t('proof.notReleased')} />;
  if (pumps.length === 0) return <Empty what={t('proof.noPump')} why={t('proof.noPumpWhy')} />;
  const { items } = data.data;
  const first = items.length + here.length === 0;
  const add = may('proof.record') && !adding ? <Button kind={first ? 'main' : 'plain'} size="crew" onClick={() => setAdding(true)}>{t(first ? 'proof.start' : 'proof.again')}</Button> : undefined;
  return (
    <div className="stack">
      {items.map((test) => <Result key={test.id} test={test} timeZone={job.timeZone} name={pumps.find(({ id }) => id === test.pump)?.name ?? test.pump} pump={evaluation?.results.pumps.find(({ part }) => part === test.pump) ?? null} />)}
      <Here tests={here} pumps={pumps} timeZone={job.timeZone} />
      {adding ? <PumpDownForm jobId={job.id} document={document} pumps={pumps} onDone={() => setAdding(false)} /> : null}
      {first && !adding ? <Empty what={t('proof.title')} why={t('proof.why')} step={add} /> : add ? <div>{add}</div> : null}
    </div>
  );
}
