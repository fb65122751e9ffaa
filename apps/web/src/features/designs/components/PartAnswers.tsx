import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { partLines } from '../model/partLines.ts';

/** One line for every number that stands at a part, with what it is. */
export function PartAnswers({ document, evaluation }: { readonly document: DesignDocument; readonly evaluation: Evaluation }) {
  const { t, q } = useText();
  const lines = partLines(evaluation.results);
  if (lines.length === 0) return null;
  const name = (part: string) => document.system.parts.find((entry) => entry.id === part)?.name ?? part;
  return (
    <section>
      <Heading level={3}>{t('designs.partNumbers')}</Heading>
      <Table caption={t('designs.partNumbers')} captionUnseen
        columns={[{ key: 'part', head: t('designs.part') }, { key: 'what', head: t('designs.what') }, { key: 'value', head: t('designs.value'), figure: true }]}
        rows={lines.map((line, at) => ({ key: String(at), cells: { part: name(line.part), what: t(line.label), value: q(line.quantity, line.value) } }))} />
    </section>
  );
}
