import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useSheets } from '../api/prices.ts';
import { MakeSheet } from './MakeSheet.tsx';
import { PriceList } from './PriceList.tsx';
import { Sheet } from './Sheet.tsx';
import './prices.css';

/** The price of a job: one sheet for each time that a design was priced. */
export function PriceSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useSheets(job.id);
  const [chosen, setChosen] = useState<string | null>(null);
  if (isPending) return <Loading what={t('prices.loading')} />;
  const sheets = data?.data.items ?? [];
  const shown = sheets.find((sheet) => sheet.id === chosen) ?? sheets[0];
  const edit = may('prices.edit');
  const name = (sheet: (typeof sheets)[number]) => t('prices.sheetOf', { name: sheet.designName, number: sheet.revisionNumber, at: sheet.createdAt }, { timeZone: job.timeZone });
  return (
    <div className="stack">
      <ProblemNotice problem={error} />
      {sheets.length > 1
        ? <Select label={t('prices.sheet')} value={shown?.id ?? ''} choices={sheets.map((sheet) => ({ value: sheet.id, label: name(sheet) }))} onChange={setChosen} />
        : shown ? <p className="faint">{name(shown)}</p> : null}
      {shown ? <Sheet key={`${shown.id} ${String(shown.version)}`} jobId={job.id} sheet={shown} edit={edit} /> : null}
      {edit ? <MakeSheet jobId={job.id} first={sheets.length === 0} onDone={() => setChosen(null)} /> : null}
      <PriceList edit={edit} />
    </div>
  );
}
