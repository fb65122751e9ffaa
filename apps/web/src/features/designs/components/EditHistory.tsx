import type { DesignDocument } from '@yardfall/calc';
import type { DraftEdit, DraftOperation, Revision } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useEdits, useMoment, useStart } from '../api/designs.ts';
import { editWords, type Documents } from '../model/editWords.ts';
import { restoreOperations } from '../model/restore.ts';

interface EditHistoryProps {
  readonly jobId: string;
  readonly revision: Revision;
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** Every edit of the draft with its maker and time, and the way back to any of them. */
export function EditHistory({ jobId, revision, document, edit }: EditHistoryProps) {
  const text = useText();
  const { t, q } = text;
  const edits = useEdits(jobId, revision.id);
  const start = useStart(jobId, revision.id);
  const documents: Documents = start.data ? [document, start.data.data.document as DesignDocument] : [document];
  const moment = useMoment(jobId, revision.id);
  if (edits.pending) return <Loading what={t('designs.loading')} />;
  const back = (seq: number) => moment.mutate(seq, { onSuccess: ({ data }) => {
    const operations = restoreOperations(document, data.document as DesignDocument);
    if (operations.length > 0) edit(operations);
  } });
  const row = (entry: DraftEdit) => ({
    key: String(entry.seq),
    cells: {
      what: editWords(entry.operation, documents, text), by: entry.by, at: q('dateTime', entry.at),
      back: <Button kind="text" busy={moment.isPending} aria-label={`${t('designs.edits.back')}: ${editWords(entry.operation, documents, text)}`} onClick={() => back(entry.seq)}>{t('designs.edits.back')}</Button>,
    },
  });
  return (
    <div className="stack">
      <ProblemNotice problem={edits.problem ?? moment.error} />
      <p className="faint measure">{edits.items.length === 0 ? t('designs.edits.none') : t('designs.edits.backWhy')}</p>
      {edits.items.length === 0 ? null : (
        <>
          <Table stacks="labelled" caption={t('designs.edits')} captionUnseen
            columns={[{ key: 'what', head: t('designs.edits.what') }, { key: 'by', head: t('designs.edits.by') }, { key: 'at', head: t('designs.edits.at') }, { key: 'back', head: <span className="unseen">{t('designs.edits.backHead')}</span> }]}
            rows={edits.items.map(row)} />
          <div className="row">
            {edits.more ? <Button onClick={edits.more}>{t('ui.more')}</Button> : null}
            <Button kind="text" busy={moment.isPending} onClick={() => back(0)}>{t('designs.edits.start')}</Button>
          </div>
        </>
      )}
    </div>
  );
}
