import type { Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useMakeOffer, useSheets } from '../api/offers.ts';
import { dayAfter } from '../model/link.ts';

/** How long an offer stands unless somebody says otherwise (ours). */
const usualDays = 30;

/** A price sheet without gaps becomes an offer; design and price are frozen with it. */
export function MakeOffer({ job, first }: { readonly job: Job; readonly first: boolean }) {
  const { t } = useText();
  const { data, error } = useSheets(job.id);
  const [today] = useState(() => new Date());
  const [typed, setTyped] = useState(() => ({ sheetId: null as string | null, validUntil: dayAfter(today, usualDays, job.timeZone), message: '' }));
  const { write, busy, problem } = useMakeOffer(() => setTyped({ ...typed, message: '' }));
  const sheets = (data?.data.items ?? []).filter((sheet) => sheet.missing.length === 0);
  const sheet = sheets.find(({ id }) => id === typed.sheetId) ?? sheets[0];
  if (error) return <ProblemNotice problem={error} />;
  if (data === undefined) return null;
  if (sheet === undefined) return <p>{t('offers.noSheet')}</p>;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    write({ params: { jobId: job.id }, body: { sheetId: sheet.id, validUntil: typed.validUntil, message: typed.message } });
  };
  return (
    <form className="stack offer-form" onSubmit={submit}>
      <Select label={t('offers.sheet')} value={sheet.id} onChange={(sheetId) => setTyped({ ...typed, sheetId })}
        choices={sheets.map((one) => ({ value: one.id, label: t('offers.sheetOf', { name: one.designName, number: one.revisionNumber, price: one.totals.price }) }))} />
      <TextField type="date" label={t('offers.validUntil')} required min={dayAfter(today, 0, job.timeZone)} value={typed.validUntil} onChange={(event) => setTyped({ ...typed, validUntil: event.target.value })} />
      <TextArea label={t('offers.message')} hint={t('offers.messageHint')} optional maxLength={2000} value={typed.message} onChange={(event) => setTyped({ ...typed, message: event.target.value })} />
      <p className="faint">{t('offers.freezes')}</p>
      <ProblemNotice problem={problem} />
      <div className="row"><Button type="submit" kind={first ? 'main' : 'plain'} busy={busy}>{t('offers.make')}</Button></div>
    </form>
  );
}
