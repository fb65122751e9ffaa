import type { DesignDocument } from '@yardfall/calc';
import { found, proposedEdit, valueAt, type DraftOperation, type FoundReport, type Revision } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { read } from '../../../lib/query.ts';
import { useText, type Text } from '../../../lib/reader.tsx';
import { nameOf } from '../model/editWords.ts';

interface FoundProposalsProps {
  readonly revision: Revision;
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** What the crew found and this draft was opened for: each with the edit that it asks for, until that is accepted or the draft issued. */
export function FoundProposals({ revision, document, edit }: FoundProposalsProps) {
  const { data } = useQuery(read(found.list, { params: { jobId: revision.jobId } }));
  const reports = (data?.data.items ?? []).filter(({ draft, status }) => draft?.revisionId === revision.id && status === 'open');
  return reports.map((report) => <Proposal key={report.id} report={report} document={document} edit={edit} />);
}

function Proposal({ report, document, edit }: Omit<FoundProposalsProps, 'revision'> & { readonly report: FoundReport }) {
  const text = useText();
  const { t } = text;
  const kind = t(`found.kind.${report.kind}`);
  const proposal = proposedEdit(document, report, kind);
  const title = report.part === null ? t('designs.forFound', { kind }) : t('designs.forFoundAt', { kind, part: nameOf([document], report.part) });
  return (
    <Notice severity="caution" title={title} action={proposal === null ? undefined : <Button onClick={() => edit([proposal])}>{t('designs.acceptFound')}</Button>}>
      {report.note === kind ? null : <p>{report.note}</p>}
      <p>{proposal === null ? t('designs.noProposal') : words(document, proposal, report, text)}</p>
    </Notice>
  );
}

function words(document: DesignDocument, proposal: DraftOperation, { measure }: FoundReport, { t }: Text): string {
  if (proposal.kind === 'add') return t('designs.proposal.line', { depth: measure ?? 0, level: (proposal.value as { readonly level: number }).level });
  if (proposal.kind !== 'replace') return '';
  const field = proposal.path.at(-1) ?? '';
  const id = proposal.path[2]?.slice(1) ?? '';
  if (field === 'reinforcement') return t('designs.proposal.steel', { name: cutName(document, id) });
  const before = Number(valueAt(document, proposal.path));
  const after = Number(proposal.value);
  return field === 'thickness' ? t('designs.proposal.slab', { name: cutName(document, id), before, after }) : t('designs.proposal.invert', { name: nameOf([document], id), before, after });
}

const cutName = ({ construction }: DesignDocument, id: string): string => construction.slabCuts.find((cut) => cut.id === id)?.name ?? id;
