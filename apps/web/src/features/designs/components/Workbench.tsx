import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { useState } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { useDraft } from '../hooks/useDraft.ts';
import { FoundProposals } from './FoundProposals.tsx';
import { EditHistory } from './EditHistory.tsx';
import { IssueForm } from './IssueForm.tsx';
import { LiveReading } from './LiveReading.tsx';
import { PartsEditor } from './PartsEditor.tsx';
import { PlanEditor } from './plan/PlanEditor.tsx';
import { PlanView } from './plan/PlanView.tsx';
import { PresenceLine } from './PresenceLine.tsx';
import { Provisional } from './Provisional.tsx';
import { RevisionReading } from './RevisionReading.tsx';
import { SurveyTake } from './SurveyTake.tsx';

interface WorkbenchProps {
  readonly jobId: string;
  readonly revision: Revision;
  readonly etag: string | null;
  readonly refresh: () => Promise<unknown>;
}

/** A draft under the hand: the section, the parts, and the numbers that follow every edit. */
export function Workbench({ jobId, revision, etag, refresh }: WorkbenchProps) {
  const draft = useDraft(jobId, revision, refresh);
  const [selected, setSelected] = useState<string | null>(null);
  const [history, setHistory] = useState(false);
  const { t } = useText();
  return (
    <div className="stack">
      <PresenceLine jobId={jobId} revisionId={revision.id} document={draft.document} part={selected} onOthersEdit={() => { if (draft.state === 'office') void refresh(); }} />
      <FoundProposals revision={revision} document={draft.document} edit={draft.edit} />
      <SurveyTake jobId={jobId} document={draft.document} edit={draft.edit} />
      <LiveReading draft={draft} revision={revision} selected={selected} onSelect={setSelected}>
        <details className="fold" open={draft.document.site.plan !== null}><summary>{t('plan.title')}</summary><PlanEditor jobId={jobId} document={draft.document} edit={draft.edit} /></details>
        <PartsEditor document={draft.document} edit={draft.edit} selected={selected} onSelect={setSelected} />
      </LiveReading>
      <details className="fold" onToggle={(event) => setHistory(event.currentTarget.open)}><summary>{t('designs.edits')}</summary>{history ? <EditHistory jobId={jobId} revision={revision} document={draft.document} edit={draft.edit} /> : null}</details>
      <IssueForm jobId={jobId} revision={revision} etag={etag} ready={draft.state === 'office'} />
    </div>
  );
}

/** A frozen revision: the same reading, with the numbers that were stored when it was issued. */
export function Frozen({ revision }: { readonly revision: Revision }) {
  const [selected, setSelected] = useState<string | null>(null);
  const { t } = useText();
  const document = revision.document as DesignDocument;
  return (
    <div className="stack">
      <Provisional document={document} />
      <RevisionReading document={document} evaluation={revision.evaluation as Evaluation | null} mark={revision.evaluationSha256} revision={revision} edit={null} selected={selected} onSelect={setSelected}>
        {document.site.plan === null ? null : <details className="fold" open><summary>{t('plan.title')}</summary><PlanView jobId={revision.jobId} document={document} /></details>}
      </RevisionReading>
    </div>
  );
}
