import type { DesignDocument, Part } from '@yardfall/calc';
import type { DraftOperation, LibraryEntry } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useLibraryEntries } from '../api/library.ts';
import { fieldWords, valueWords } from '../model/editWords.ts';
import { libraryStanding, takeOperations } from '../model/fromLibrary.ts';

interface LibraryTakeProps {
  readonly document: DesignDocument;
  readonly part: Part;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** Figures of a part from the company's library: taken by hand, and offered again when the library has changed. */
export function LibraryTake({ document, part, edit }: LibraryTakeProps) {
  const text = useText();
  const { t } = text;
  const { fitting, taken, isNewer, isOwn, differences } = libraryStanding(document, part, useLibraryEntries());
  const take = (entry: LibraryEntry) => edit(takeOperations(document, part, entry, new Date()));
  const entry = taken?.entry ?? null;
  if (fitting.length === 0 && taken === null) return null;
  return (
    <div className="stack part-library">
      {taken === null ? null : <p className="faint">{entry === null ? t('library.gone') : t('library.takenFrom', { name: entry.name, at: taken.at })} {isOwn ? t('library.own') : null}</p>}
      {isNewer && entry !== null ? (
        <Notice severity="note" title={t('library.newer', { name: entry.name })} action={<Button onClick={() => take(entry)}>{t('library.takeNew')}</Button>}>
          <Table stacks="labelled" caption={t('library.newer', { name: entry.name })} captionUnseen columns={[{ key: 'field', head: t('library.difference') }, { key: 'here', head: t('library.here') }, { key: 'there', head: t('library.there') }]}
            rows={differences.map(({ field, before, after }) => ({ key: field, cells: { field: fieldWords([field], text, part), here: valueWords(field, before, text), there: valueWords(field, after, text) } }))} />
        </Notice>
      ) : null}
      {fitting.length > 0 ? (
        <Select label={t('library.take')} value="" onChange={(id) => { const chosen = fitting.find((one) => one.id === id); if (chosen) take(chosen); }} choices={fitting.map((one) => ({ value: one.id, label: one.name }))} />
      ) : null}
    </div>
  );
}
