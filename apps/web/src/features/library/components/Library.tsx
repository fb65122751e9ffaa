import { libraryKinds, type LibraryEntry, type LibraryKind } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useLibrary } from '../api/library.ts';
import { figuresText } from '../model/figuresText.ts';
import { EntryDialog } from './EntryDialog.tsx';
import { SheetExchange } from './SheetExchange.tsx';
import './library.css';

/** What is being written: an entry that is there, or a new one of a kind. */
type Opened = { readonly entry: LibraryEntry } | { readonly kind: LibraryKind };

/** Pumps and parts that the company keeps, by kind; the office changes them, everybody reads them. */
export function Library() {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useLibrary();
  const [opened, setOpened] = useState<Opened | null>(null);
  const [kind, setKind] = useState<LibraryKind>('pump');
  const entries = data?.data.items ?? [];
  const edit = may('library.edit');
  return (
    <section className="stack library">
      <Heading id="library">{t('library.title')}</Heading>
      <p className="faint measure">{t('library.why')}</p>
      {isPending ? <Loading what={t('library.loading')} /> : null}
      <ProblemNotice problem={error} />
      {!isPending && entries.length === 0 ? <Empty what={t('library.none')} why={t('library.noneWhy')} /> : null}
      {libraryKinds.map((one) => <Kind key={one} kind={one} entries={entries.filter(({ content }) => content.kind === one)} onOpen={edit ? (entry) => setOpened({ entry }) : null} />)}
      {edit ? (
        <div className="row">
          <Select label={t('library.newKind')} value={kind} onChange={setKind} choices={libraryKinds.map((value) => ({ value, label: t(`library.kind.${value}`) }))} />
          <Button onClick={() => setOpened({ kind })}>{t('library.new')}</Button>
        </div>
      ) : null}
      <SheetExchange entries={entries} edit={edit} />
      {opened ? <EntryDialog key={'entry' in opened ? opened.entry.id : opened.kind} {...('entry' in opened ? { entry: opened.entry, kind: opened.entry.content.kind } : { entry: null, kind: opened.kind })} onClose={() => setOpened(null)} /> : null}
    </section>
  );
}

interface KindProps {
  readonly kind: LibraryKind;
  readonly entries: readonly LibraryEntry[];
  readonly onOpen: ((entry: LibraryEntry) => void) | null;
}

function Kind({ kind, entries, onOpen }: KindProps) {
  const text = useText();
  const { t } = text;
  if (entries.length === 0) return null;
  return (
    <Table stacks="labelled" caption={t(`library.kind.${kind}`)}
      columns={[{ key: 'name', head: t('library.name') }, { key: 'figures', head: t('library.figures') }, { key: 'source', head: t('library.source') }, { key: 'changed', head: t('library.changed') }]}
      rows={entries.map((entry) => ({
        key: entry.id,
        cells: {
          name: (
            <>
              {onOpen ? <button type="button" className="library-open" onClick={() => onOpen(entry)}>{entry.name}</button> : entry.name}
              {entry.active ? null : <span className="faint"> {t('library.outOfUse')}</span>}
            </>
          ),
          figures: figuresText(entry.content, text), source: entry.source, changed: t('library.changedBy', { by: entry.by, at: entry.updatedAt }),
        },
      }))} />
  );
}
