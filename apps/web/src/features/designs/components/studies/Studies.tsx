import type { Revision, Study } from '@yardfall/contracts';
import { useState, type ReactNode } from 'react';
import { Heading } from '../../../../components/Heading.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { useStudies, useStudy } from '../../api/studies.ts';
import { AskOptions } from './AskOptions.tsx';
import { AskRecord } from './AskRecord.tsx';
import { OptionsResult } from './OptionsResult.tsx';
import { RecordResult } from './RecordResult.tsx';
import { StudyLine } from './StudyLine.tsx';
import './studies.css';

interface StudiesProps {
  readonly jobId: string;
  readonly revision: Revision;
  readonly onVariant: (revisionId: string) => void;
}

/** Long work on a design, done beside the page: what protects for less, and years of recorded rain. */
export function Studies({ jobId, revision, onVariant }: StudiesProps) {
  const { t } = useText();
  const { data, error } = useStudies(jobId, revision.id);
  const items = data?.data.items ?? [];
  const of = (kind: Study['kind']) => items.filter((study) => study.kind === kind);
  return (
    <>
      <ProblemNotice problem={error} />
      <Kind title={t('studies.options.title')} why={t('studies.options.why')} studies={of('options')} revision={revision} onVariant={onVariant}><AskOptions jobId={jobId} revision={revision} /></Kind>
      <Kind title={t('studies.record.title')} why={t('studies.record.why')} studies={of('record')} revision={revision} onVariant={onVariant}><AskRecord jobId={jobId} revision={revision} /></Kind>
    </>
  );
}

interface KindProps {
  readonly title: string;
  readonly why: string;
  readonly studies: readonly Study[];
  readonly revision: Revision;
  readonly onVariant: (revisionId: string) => void;
  readonly children: ReactNode;
}

/** One kind of study: what was asked before, the newest shown, and a new one to ask. */
function Kind({ title, why, studies, revision, onVariant, children }: KindProps) {
  const { t } = useText();
  const [chosen, setChosen] = useState<string | null>(null);
  const running = studies.filter(({ status }) => status === 'waiting' || status === 'running');
  const done = studies.filter(({ status }) => status !== 'waiting' && status !== 'running');
  const shown = done.find(({ id }) => id === chosen) ?? done[0] ?? null;
  return (
    <section className="stack">
      <Heading level={3}>{title}</Heading>
      <p className="faint measure">{why}</p>
      {running.map((study) => <StudyLine key={study.id} study={study} />)}
      {done.length > 1 ? <Select label={t('studies.shown')} value={shown?.id ?? ''} onChange={setChosen} choices={done.map((study) => ({ value: study.id, label: t('studies.asked', { by: study.by, at: study.createdAt }) }))} /> : null}
      {shown === null ? null : <Shown key={shown.id} study={shown} revision={revision} onVariant={onVariant} />}
      <details className="fold"><summary>{t('studies.ask')}</summary>{children}</details>
    </section>
  );
}

function Shown({ study, revision, onVariant }: { readonly study: Study } & Pick<KindProps, 'revision' | 'onVariant'>) {
  const { t, say } = useText();
  const read = useStudy(study.jobId, study.id);
  const detail = read.data?.data;
  if (study.status === 'stopped') return <p>{t('studies.stopped')}</p>;
  if (study.status === 'failed') return <p>{t('studies.failed', { why: study.problem === null ? '' : say(study.problem.code, study.problem.params) })}</p>;
  return (
    <div className="stack">
      <ProblemNotice problem={read.error} />
      {study.documentSha256 === revision.documentSha256 ? null : <p className="study-older">{t('studies.older')}</p>}
      {detail?.result && study.kind === 'options' ? <OptionsResult detail={detail} onVariant={onVariant} /> : null}
      {detail?.result && study.kind === 'record' ? <RecordResult detail={detail} /> : null}
    </div>
  );
}
