import type { PriceSheet } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Saved } from '../../../components/Saved.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useStoreSheet } from '../api/prices.ts';
import { bodyOf, editedSheet } from '../model/sheet.ts';
import { Lines } from './Lines.tsx';
import { Missing } from './Missing.tsx';
import { Rates } from './Rates.tsx';
import { Totals } from './Totals.tsx';

interface SheetProps {
  readonly jobId: string;
  readonly sheet: PriceSheet;
  readonly edit: boolean;
}

/** One price sheet. It is changed here and stored as a whole; the office computes every amount. */
export function Sheet({ jobId, sheet, edit }: SheetProps) {
  const { t } = useText();
  const [now, setNow] = useState(() => editedSheet(sheet));
  const { write, busy, problem } = useStoreSheet();
  const open = edit && sheet.status === 'draft';
  const body = bodyOf(now);
  const changed = JSON.stringify(body) !== JSON.stringify(bodyOf(editedSheet(sheet)));
  const store = () => write({ params: { jobId, sheetId: sheet.id }, body, ifMatch: `"${String(sheet.version)}"` });
  return (
    <article className="stack">
      {sheet.status === 'frozen' ? <Notice><p>{t('prices.frozenWhy')}</p></Notice> : null}
      <Missing codes={sheet.missing} sheet={now} onChange={open ? setNow : null} />
      <Heading level={3}>{t('prices.lines')}</Heading>
      <Lines sheet={now} onChange={open ? setNow : null} />
      {open ? <><Heading level={3}>{t('prices.rates')}</Heading><Rates sheet={now} onChange={setNow} /></> : null}
      <Heading level={3}>{t('prices.totals')}</Heading>
      {changed ? <p className="faint">{t('prices.stale')}</p> : null}
      <Totals sheet={sheet} />
      <ProblemNotice problem={problem} />
      {open ? (
        <div className="row">
          <Button kind="main" busy={busy} disabled={busy || !changed} onClick={store}>{t('prices.store')}</Button>
          {changed ? <Button kind="text" onClick={() => setNow(editedSheet(sheet))}>{t('prices.undo')}</Button> : null}
          <Saved state={busy ? 'saving' : changed ? 'changed' : 'office'} />
        </div>
      ) : null}
    </article>
  );
}
