import type { DesignDocument } from '@yardfall/calc';
import { libraryFields, type Revision } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { CheckField } from '../../../../components/Field.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { useLibraryEntries } from '../../api/library.ts';
import { useAskOptions } from '../../api/studies.ts';

interface AskProps {
  readonly jobId: string;
  readonly revision: Revision;
}

/** What may be built otherwise: parts of the library for each part, and gutters that may be led away or not. */
export function AskOptions({ jobId, revision }: AskProps) {
  const { t } = useText();
  const entries = useLibraryEntries();
  const document = revision.document as DesignDocument;
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const { write, busy, problem } = useAskOptions();
  const parts = document.system.parts.map((part) => ({ part, fitting: entries.filter((entry) => entry.active && libraryFields(entry.content, entry.name, part) !== null) })).filter(({ fitting }) => fitting.length > 0);
  const gutters = document.system.parts.filter(({ id, kind }) => kind === 'gutter' && document.site.catchments.some(({ drainsTo }) => drainsTo.kind === 'part' && drainsTo.id === id));
  const toggle = (key: string) => setChosen((now) => new Set(now.has(key) ? [...now].filter((one) => one !== key) : [...now, key]));
  const box = (key: string, label: string) => <CheckField key={key} label={label} checked={chosen.has(key)} onChange={() => toggle(key)} />;
  const start = () => write({
    params: { jobId, revisionId: revision.id },
    body: {
      picks: parts.map(({ part, fitting }) => ({ part: part.id, entries: fitting.filter(({ id }) => chosen.has(`${part.id} ${id}`)).map(({ id }) => id) })).filter(({ entries: picked }) => picked.length > 0),
      diversions: gutters.filter(({ id }) => chosen.has(id)).map(({ id }) => id),
    },
  });
  return (
    <div className="stack">
      {parts.length === 0 && gutters.length === 0 ? <p>{t('studies.options.nothing')}</p> : null}
      {parts.map(({ part, fitting }) => (
        <fieldset key={part.id} className="study-choice"><legend>{t('studies.options.insteadOf', { name: part.name })}</legend>{fitting.map((entry) => box(`${part.id} ${entry.id}`, entry.name))}</fieldset>
      ))}
      {gutters.length > 0 ? <fieldset className="study-choice"><legend>{t('studies.options.gutters')}</legend>{gutters.map(({ id, name }) => box(id, name))}</fieldset> : null}
      <ProblemNotice problem={problem} />
      <div className="row"><Button kind="main" busy={busy} disabled={chosen.size === 0} onClick={start}>{t('studies.options.start')}</Button></div>
    </div>
  );
}
