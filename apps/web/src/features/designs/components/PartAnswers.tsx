import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { partLines } from '../model/partLines.ts';
import { Figure } from './Workings.tsx';

/** Every number that stands at a part, under the part's name. */
export function PartAnswers({ document, evaluation }: { readonly document: DesignDocument; readonly evaluation: Evaluation }) {
  const { t, q } = useText();
  const years = document.rain.designReturnPeriod;
  const lines = partLines(evaluation.results, years);
  const parts = [...new Set(lines.map(({ part }) => part))];
  if (parts.length === 0) return null;
  const name = (part: string) => document.system.parts.find((entry) => entry.id === part)?.name ?? part;
  return (
    <section className="stack">
      <Heading level={3} aside={t('designs.partNumbersStorm', { years })}>{t('designs.partNumbers')}</Heading>
      <div className="part-answers">
        {parts.map((part) => (
          <Table key={part} caption={name(part)} columns={[{ key: 'what', head: t('designs.what') }, { key: 'value', head: t('designs.value'), figure: true }]}
            rows={lines.filter((line) => line.part === part).map((line) => ({ key: line.label, cells: { what: t(line.label), value: <Figure result={line.result}>{q(line.quantity, line.value)}</Figure> } }))} />
        ))}
      </div>
    </section>
  );
}
