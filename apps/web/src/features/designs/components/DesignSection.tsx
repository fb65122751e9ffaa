import type { Design, Job, Revision, RevisionRow } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useDesigns, useRevise, useRevision } from '../api/designs.ts';
import { latestRevision, latestToEdit } from '../model/latest.ts';
import { CompareView } from './CompareView.tsx';
import { PrintLinks } from './PrintLinks.tsx';
import { Studies } from './studies/Studies.tsx';
import { StartDesign } from './StartDesign.tsx';
import { Frozen, Workbench } from './Workbench.tsx';
import './designs.css';

/** Variants and revisions of a job, and the one that is open. */
export function DesignSection({ job: { id: jobId } }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const list = useDesigns(jobId);
  const [chosen, setChosen] = useState<string | null>(null);
  const designs = list.data?.data.items ?? [];
  const openId = chosen ?? (may('designs.edit') ? latestToEdit : latestRevision)(designs)?.id ?? null;
  const open = useRevision(jobId, openId);
  const [against, setAgainst] = useState<string | null>(null);
  const others = designs.flatMap((design) => design.revisions).filter(({ id }) => id !== openId);
  if (list.isPending) return <Loading what={t('designs.loading')} />;
  return (
    <div className="stack">
      <ProblemNotice problem={list.error ?? open.error} />
      {designs.length > 0 ? <Revisions designs={designs} openId={openId} onOpen={setChosen} /> : null}
      {others.length > 0 && openId !== null ? (
        <Select label={t('designs.compare')} value={against ?? 'none'} onChange={(id) => setAgainst(id === 'none' ? null : id)}
          choices={[{ value: 'none', label: t('designs.compare.none') }, ...others.map(({ id, designName, number }) => ({ value: id, label: t('designs.revisionName', { name: designName, number }) }))]} />
      ) : null}
      {against !== null && against !== openId && open.data ? <CompareView jobId={jobId} beforeId={against} after={open.data.data} /> : null}
      {may('designs.edit') ? <StartDesign jobId={jobId} designs={designs} onStarted={setChosen} /> : designs.length === 0 ? <p>{t('designs.none')}</p> : null}
      {open.data ? <PrintLinks key={open.data.data.id} revision={open.data.data} /> : null}
      {open.data ? <OpenRevision jobId={jobId} revision={open.data.data} etag={open.data.etag} refresh={open.refetch} onRevised={setChosen} mayEdit={may('designs.edit')} /> : null}
      {open.data && may('studies.read') ? <Studies key={`studies ${open.data.data.id}`} jobId={jobId} revision={open.data.data} onVariant={setChosen} /> : null}
    </div>
  );
}

interface OpenProps {
  readonly jobId: string;
  readonly revision: Revision;
  readonly etag: string | null;
  readonly refresh: () => Promise<unknown>;
  readonly onRevised: (id: string) => void;
  readonly mayEdit: boolean;
}

function OpenRevision({ jobId, revision, etag, refresh, onRevised, mayEdit }: OpenProps) {
  const { t } = useText();
  const revise = useRevise(jobId);
  if (revision.status === 'draft' && mayEdit) return <Workbench key={revision.id} jobId={jobId} revision={revision} etag={etag} refresh={refresh} />;
  const there = revise.error instanceof ApiProblem && revise.error.code === 'design.draftOpen' ? String(revise.error.params['revisionId']) : null;
  const start = () => revise.mutate({ designId: revision.designId, fromRevisionId: revision.id }, { onSuccess: ({ data }) => onRevised(data.id) });
  return (
    <div className="stack">
      {mayEdit ? <div className="row"><Button busy={revise.isPending} onClick={start}>{t('designs.revise', { number: revision.number })}</Button></div> : null}
      <ProblemNotice problem={revise.error} action={there === null ? undefined : <Button onClick={() => onRevised(there)}>{t('designs.toDraft')}</Button>} />
      <Frozen key={revision.id} revision={revision} />
    </div>
  );
}

function Revisions({ designs, openId, onOpen }: { readonly designs: readonly Design[]; readonly openId: string | null; readonly onOpen: (id: string) => void }) {
  const { t } = useText();
  const rows = designs.flatMap((design) => design.revisions.map((revision) => ({ key: revision.id, strong: revision.isBuildRevision, cells: { name: open(revision, design.name), state: state(revision), findings: counts(revision) } })));
  function open(revision: RevisionRow, name: string) {
    return <button type="button" className="revision-open" aria-pressed={revision.id === openId} onClick={() => onOpen(revision.id)}>{t('designs.revisionName', { name, number: revision.number })}</button>;
  }
  function state(revision: RevisionRow) {
    const words = t(`designs.status.${revision.status}`);
    const said = revision.provisional ? `${words}, ${t('designs.provisionalMark')}` : words;
    return revision.isBuildRevision ? t('designs.built', { state: said }) : revision.issuedAt && revision.issuedBy ? t('designs.issuedBy', { state: said, by: revision.issuedBy, at: revision.issuedAt }) : said;
  }
  function counts(revision: RevisionRow) {
    return t('designs.counts', { stops: revision.stopCount, cautions: revision.cautionCount });
  }
  return <Table caption={t('designs.revisions')} columns={[{ key: 'name', head: t('designs.revision') }, { key: 'state', head: t('designs.state') }, { key: 'findings', head: t('designs.findings') }]} rows={rows} />;
}
