import type { DesignDocument, Finding } from '@yardfall/calc';
import type { DraftOperation, Revision } from '@yardfall/contracts';
import { sourceWords } from '@yardfall/text';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useAcknowledge } from '../api/designs.ts';
import { remedyOperations } from '../model/remedy.ts';

interface FindingsListProps {
  readonly document: DesignDocument;
  readonly findings: readonly Finding[];
  readonly revision: Revision;
  /** Null when the revision is frozen. */
  readonly edit: ((operations: readonly DraftOperation[]) => void) | null;
  readonly onSelect: (part: string) => void;
}

const order = { refer: 0, stop: 1, caution: 2, note: 3 } as const;

/** What the checks found, worst first: the place, the reason with its limit and source, and what would mend it. */
export function FindingsList({ document, findings, revision, edit, onSelect }: FindingsListProps) {
  const { t } = useText();
  const rows = (some: readonly Finding[]) => (
    <ul className="findings">
      {some.map((finding) => <FindingRow key={`${finding.code}@${finding.at ?? ''}`} {...{ document, finding, revision, edit, onSelect }} />)}
    </ul>
  );
  const open = findings.filter(({ severity }) => severity !== 'note').toSorted((a, b) => order[a.severity] - order[b.severity]);
  const notes = findings.filter(({ severity }) => severity === 'note');
  return (
    <div className="stack">
      {open.length === 0 ? <p>{t('designs.noFindings')}</p> : rows(open)}
      {notes.length === 0 ? null : <details className="fold"><summary>{t('designs.notes', { n: notes.length })}</summary>{rows(notes)}</details>}
    </div>
  );
}

function FindingRow({ document, finding, revision, edit, onSelect }: Omit<FindingsListProps, 'findings'> & { readonly finding: Finding }) {
  const { t, say, language } = useText();
  const place = placeName(document, finding.at);
  const sentence = say(`findings.${finding.code}`, { ...finding.limit, ...finding.params });
  const remedy = finding.remedy;
  const at = finding.at;
  return (
    <li>
      <FindingMark severity={finding.severity} />
      <div className="finding-body">
        <p>
          {place === null || at === null ? null : <button type="button" className="finding-place" onClick={() => onSelect(at)}>{place}</button>}{' '}
          {place !== null && sentence.startsWith(`${place}: `) ? sentence.slice(place.length + 2) : sentence}
        </p>
        <p className="faint">{t('designs.checkSource', { source: sourceWords(language, finding.source) })}</p>
        {remedy && edit ? <Button onClick={() => edit(remedyOperations(document, remedy))}>{say(`findings.${remedy.code}`, remedy.params)}</Button> : null}
        {finding.severity === 'caution' ? <Acknowledge finding={finding} revision={revision} open={edit !== null} /> : null}
      </div>
    </li>
  );
}

function Acknowledge({ finding, revision, open }: { readonly finding: Finding; readonly revision: Revision; readonly open: boolean }) {
  const { t } = useText();
  const [note, setNote] = useState<string | null>(null);
  const acknowledge = useAcknowledge(revision.jobId, revision.id);
  const done = revision.acknowledgements.find((entry) => entry.code === finding.code && entry.at === finding.at);
  if (done) return <p>{t('designs.acknowledgedBy', { by: done.by, when: done.when })}{done.note === '' ? '' : `: ${done.note}`}</p>;
  if (!open) return null;
  if (note === null) return <Button kind="text" onClick={() => setNote('')}>{t('designs.acknowledge')}</Button>;
  return (
    <form className="stack" onSubmit={(event) => { event.preventDefault(); acknowledge.mutate({ code: finding.code, at: finding.at, note }); }}>
      <TextField label={t('designs.acknowledgeNote')} value={note} onChange={(event) => setNote(event.target.value)} />
      <div className="row"><Button type="submit" busy={acknowledge.isPending}>{t('designs.acknowledge')}</Button></div>
      <ProblemNotice problem={acknowledge.error} />
    </form>
  );
}

function placeName(document: DesignDocument, at: string | null): string | null {
  if (at === null) return null;
  const { site, system } = document;
  return [...system.parts, ...site.sills, ...site.lowSpots, ...site.candidateOutlets, ...site.catchments, ...site.utilities].find((entry) => entry.id === at)?.name ?? null;
}
