import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useDesigns, useMakeSheet } from '../api/prices.ts';
import { issuedRevisions } from '../model/sheet.ts';

interface MakeSheetProps {
  readonly jobId: string;
  readonly first: boolean;
  readonly onDone: () => void;
}

/** The quantities of an issued revision meet the price list. */
export function MakeSheet({ jobId, first, onDone }: MakeSheetProps) {
  const { t } = useText();
  const { data, error } = useDesigns(jobId);
  const [chosen, setChosen] = useState<string | null>(null);
  const { write, busy, problem } = useMakeSheet(onDone);
  const issued = issuedRevisions(data?.data.items ?? []);
  const revision = issued.find(({ id }) => id === chosen) ?? issued[0];
  const step = revision === undefined ? (
    <p>{t('prices.noIssued')}</p>
  ) : (
    <div className="stack">
      <Select label={t('prices.revision')} value={revision.id} onChange={setChosen}
        choices={issued.map(({ id, designName, number }) => ({ value: id, label: t('prices.revisionOf', { name: designName, number }) }))} />
      <ProblemNotice problem={problem} />
      <div className="row"><Button kind={first ? 'main' : 'plain'} busy={busy} onClick={() => write({ params: { jobId }, body: { revisionId: revision.id } })}>{t('prices.make')}</Button></div>
    </div>
  );
  if (error) return <ProblemNotice problem={error} />;
  if (data === undefined) return null;
  if (first) return <Empty what={t('prices.none')} why={t('prices.noneWhy')} step={step} />;
  return <details className="price-fold"><summary>{t('prices.another')}</summary>{step}</details>;
}
