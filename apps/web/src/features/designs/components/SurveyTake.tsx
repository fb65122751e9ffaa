import type { DesignDocument } from '@yardfall/calc';
import { applyOperations, surveys, type DraftOperation } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { compare } from '../model/compare.ts';
import { surveyStanding } from '../model/fromSurvey.ts';
import { DifferenceTable } from './CompareView.tsx';

interface SurveyTakeProps {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** What the survey of the job says otherwise than the draft: offered with its differences, and taken as one edit. */
export function SurveyTake({ jobId, document, edit }: SurveyTakeProps) {
  const { t } = useText();
  const [now] = useState(() => new Date());
  const { data } = useQuery(read(surveys.list, { params: { jobId } }));
  const standing = surveyStanding(document, data?.data.items ?? [], now);
  if (standing === null) return null;
  const after = applyOperations(document, standing.operations);
  const rows = compare({ document, evaluation: null }, { document: after, evaluation: null });
  const table = <DifferenceTable title={t('designs.survey.differences')} rows={rows} after={after} heads={[t('library.here'), t('designs.survey.there')]} />;
  const take = <div className="row"><Button onClick={() => edit(standing.operations)}>{t('designs.survey.take')}</Button></div>;
  if (standing.isNewer) return <Notice severity="note" title={t('designs.survey.newer')} action={take}>{table}</Notice>;
  return <details className="fold"><summary>{t('designs.survey.other')}</summary><div className="stack">{table}{take}</div></details>;
}
