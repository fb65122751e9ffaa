import type { Job, Survey } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useSurveys } from '../api/surveys.ts';
import { emptySurvey } from '../model/content.ts';
import { Reduction } from './Reduction.tsx';
import { SurveyForm } from './SurveyForm.tsx';
import './surveys.css';

/** The level books of a job with what each comes to. */
export function Levels({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useSurveys(job.id);
  const [editing, setEditing] = useState<string | null>(null);
  if (isPending) return <Loading what={t('surveys.loading')} />;
  const items = data?.data.items ?? [];
  const edit = may('surveys.edit');
  const fresh = <SurveyForm jobId={job.id} surveyId={null} version={0} name={t('surveys.visit', { n: items.length + 1 })} content={emptySurvey(t('surveys.floor'))} onDone={() => setEditing(null)} />;
  return (
    <div className="stack">
      <div className="row to-yard no-print">
        <Link className="button button-main button-crew" to="/jobs/$jobId/yard" params={{ jobId: job.id }}>{t('surveys.yard.enter')}</Link>
        <span className="faint">{t('surveys.yard.enterWhy')}</span>
      </div>
      <ProblemNotice problem={error} />
      {items.map((survey) => editing === survey.id
        ? <SurveyForm key={survey.id} jobId={job.id} surveyId={survey.id} version={survey.version} name={survey.name} content={survey.content} onDone={() => setEditing(null)} />
        : <OneSurvey key={survey.id} survey={survey} timeZone={job.timeZone} onEdit={edit ? () => setEditing(survey.id) : null} />)}
      {editing === 'new' ? fresh : null}
      {editing === null && edit && items.length > 0 ? <div className="row"><Button onClick={() => setEditing('new')}>{t('surveys.another')}</Button></div> : null}
      {editing === null && items.length === 0
        ? <Empty what={t('surveys.none')} why={t('surveys.noneWhy')} step={edit ? <Button kind="main" onClick={() => setEditing('new')}>{t('surveys.start')}</Button> : undefined} />
        : null}
    </div>
  );
}

function OneSurvey({ survey, timeZone, onEdit }: { readonly survey: Survey; readonly timeZone: string; readonly onEdit: (() => void) | null }) {
  const { t } = useText();
  return (
    <article className="stack">
      <Heading level={3} aside={t('surveys.by', { by: survey.by, at: survey.updatedAt }, { timeZone })}>{survey.name}</Heading>
      <Reduction survey={survey} />
      {onEdit ? <div className="row"><Button onClick={onEdit}>{t('surveys.correct')}</Button></div> : null}
    </article>
  );
}
