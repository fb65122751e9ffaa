import type { DesignDocument, Evaluation, Finding } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText, type Text } from '../../../lib/reader.tsx';
import { useRevision } from '../api/designs.ts';
import { compare, differenceGroups, type Difference } from '../model/compare.ts';
import { fieldWords, valueWords } from '../model/editWords.ts';
import { CompareDrawing } from './CompareDrawing.tsx';

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
      {differences.length === 0 ? <p>{t('designs.compare.same')}</p> : <CompareDrawing one={before} other={after} />}
      {differenceGroups.map((group) => {
        const rows = differences.filter((difference) => difference.group === group);
        return rows.length === 0 ? null : <DifferenceTable key={group} title={t(`designs.compare.${group}`)} rows={rows} after={after.document as DesignDocument} heads={[t('designs.compare.before'), t('designs.compare.after')]} />;
      })}
    </section>
  );
}

interface DifferenceTableProps {
  readonly title: string;
  readonly rows: readonly Difference[];
  readonly after: DesignDocument;
  /** Words over the two sides. */
  readonly heads: readonly [before: string, after: string];
}

/** Differences of two documents by name, each with both sides. */
export function DifferenceTable({ title, rows, after, heads: [before, now] }: DifferenceTableProps) {
  const text = useText();
  const { t } = text;
  const lines = rows.map((row) => ({ key: `${row.id} ${row.path.join('.')}`, cells: { what: what(row, after, text), before: side(row, row.before, text), after: side(row, row.after, text) } }));
  const read = lines.filter(({ cells }) => cells.before !== cells.after);
  return (
    <>
      {read.length === 0 ? null : <Table stacks="labelled" caption={title} columns={[{ key: 'what', head: t('designs.compare.what') }, { key: 'before', head: before }, { key: 'after', head: now }]} rows={read} />}
      {read.length === lines.length ? null : <p className="faint">{t('designs.compare.finer', { group: title, n: lines.length - read.length })}</p>}
    </>
  );
}

function what({ name, figure, group, id, path }: Difference, after: DesignDocument, text: Text): string {
  const part = group === 'parts' ? (after.system.parts.find((item) => item.id === id) ?? null) : null;
  const field = figure === null ? fieldWords(path, text, part) : figure.label === null ? '' : text.say(figure.label, figure.params);
  if (field === '') return name === '' ? text.t('designs.compare.whole') : name;
  return name === '' ? field : text.t('designs.compare.field', { name, field });
}

function side({ change, figure, group, path }: Difference, value: unknown, text: Text): string {
  const { t, q, say } = text;
  if (figure !== null) return typeof value === 'number' ? q(figure.quantity, value) : t(change === 'added' ? 'designs.compare.notYet' : 'designs.compare.gone');
  if (group === 'findings' && value !== null) return say(`findings.${(value as Finding).code}`, { ...(value as Finding).limit, ...(value as Finding).params });
  if (path.length > 0) return valueWords(path.at(-1) ?? '', value, text);
  if (value !== null) return t('designs.compare.there');
  return t(change === 'added' ? 'designs.compare.notYet' : 'designs.compare.gone');
}
