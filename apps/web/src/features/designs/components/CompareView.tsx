import type { DesignDocument, Evaluation, Finding } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useRevision } from '../api/designs.ts';
import { compare, differenceGroups, type Difference } from '../model/compare.ts';

interface CompareViewProps {
  readonly jobId: string;
  readonly beforeId: string;
  readonly after: Revision;
}

const asCompared = ({ document, evaluation }: Revision) => ({ document: document as DesignDocument, evaluation: evaluation as Evaluation | null });

/** Two revisions side by side: only what differs, by name. */
export function CompareView({ jobId, beforeId, after }: CompareViewProps) {
  const { t } = useText();
  const { data, error, isPending } = useRevision(jobId, beforeId);
  if (isPending) return <Loading what={t('designs.loading')} />;
  if (!data) return <ProblemNotice problem={error} />;
  const before = data.data;
  const differences = compare(asCompared(before), asCompared(after));
  const nameOf = ({ designName, number }: Revision) => t('designs.revisionName', { name: designName, number });
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.compare.title', { before: nameOf(before), after: nameOf(after) })}</Heading>
      {differences.length === 0 ? <p>{t('designs.compare.same')}</p> : null}
      {differenceGroups.map((group) => {
        const rows = differences.filter((difference) => difference.group === group);
        return rows.length === 0 ? null : <Group key={group} title={t(`designs.compare.${group}`)} rows={rows} />;
      })}
    </section>
  );
}

function Group({ title, rows }: { readonly title: string; readonly rows: readonly Difference[] }) {
  const { t, q, say } = useText();
  function figure(difference: Difference, value: unknown): string {
    const { kind, group, path, change } = difference;
    if (value === null || value === undefined) return '';
    if (group === 'findings') return say(`findings.${(value as Finding).code}`, { ...(value as Finding).limit, ...(value as Finding).params });
    if (path.length === 0 && kind.as === 'plain') return t(change === 'added' ? 'designs.compare.added' : 'designs.compare.removed');
    if (typeof value === 'number' && kind.as === 'quantity') return q(kind.quantity, value);
    if (typeof value === 'number' && kind.as === 'field' && (kind.field === 'level' || kind.field === 'length' || kind.field === 'slope')) return q(kind.field, value);
    if (typeof value === 'number' && kind.as === 'field' && kind.field === 'size') return q('height', value);
    return typeof value === 'string' ? value : JSON.stringify(value);
  }
  function what({ name, label, path }: Difference): string {
    const field = label === null ? path.join(' ') : t(label as 'designs.field.name');
    if (field === '') return name;
    return name === '' ? field : t('designs.compare.field', { name, field });
  }
  return (
    <Table stacks="labelled" caption={title} columns={[{ key: 'what', head: t('designs.compare.what') }, { key: 'before', head: t('designs.compare.before') }, { key: 'after', head: t('designs.compare.after') }]}
      rows={rows.map((row) => ({ key: `${row.id} ${row.path.join('.')}`, cells: { what: what(row), before: figure(row, row.before), after: figure(row, row.after) } }))} />
  );
}
