import type { LibraryEntry } from '@yardfall/contracts';
import { useState } from 'react';
import { FilePick } from '../../../components/FilePick.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useImportEntries } from '../api/library.ts';
import { readSheet, writeSheet, type SheetRead } from '../model/sheet.ts';

/** The whole library out as a sheet, and a sheet in: all of it or nothing. */
export function SheetExchange({ entries, edit }: { readonly entries: readonly LibraryEntry[]; readonly edit: boolean }) {
  const { t, say } = useText();
  const [unread, setUnread] = useState<Extract<SheetRead, { ok: false }> | null>(null);
  const { write, busy, problem, answer } = useImportEntries();
  const take = async (file: File) => {
    const read = readSheet(await file.text());
    setUnread(read.ok ? null : read);
    if (read.ok) write({ body: { entries: [...read.entries] } });
  };
  return (
    <div className="stack">
      {entries.length > 0 ? <div className="row"><a className="button button-plain" href={`data:text/csv;charset=utf-8,${encodeURIComponent(writeSheet(entries))}`} download={`${t('library.fileName')}.csv`}>{t('library.export')}</a></div> : null}
      {edit ? <FilePick label={t('library.import')} hint={t('library.importHint')} accept=".csv,text/csv" disabled={busy} onPick={(file) => void take(file)} /> : null}
      {unread ? <Notice severity="stop"><p>{say(unread.code, unread.params)} {t('library.nothingTaken')}</p></Notice> : null}
      <ProblemNotice problem={problem} />
      {answer && !unread ? <p role="status">{t('library.imported', answer)}</p> : null}
    </div>
  );
}
