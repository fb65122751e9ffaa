import type { DesignDocument, Evaluation, Freeboard } from '@yardfall/calc';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { PartAnswers } from './PartAnswers.tsx';
import { Figure } from './Workings.tsx';

interface AnswersProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
}

/** The numbers of the evaluation, in the order in which they are asked: gravity, the sill, the parts. */
export function Answers({ document, evaluation }: AnswersProps) {
  return (
    <div className="stack">
      <GravityTable document={document} evaluation={evaluation} />
      <FreeboardTable document={document} evaluation={evaluation} />
      <OutageLine evaluation={evaluation} />
      <PartAnswers document={document} evaluation={evaluation} />
    </div>
  );
}

function GravityTable({ document, evaluation }: AnswersProps) {
  const { t, q } = useText();
  if (evaluation.results.gravity.length === 0) return null;
  const rows = evaluation.results.gravity.map((answer, index) => ({
    key: answer.outlet,
    cells: {
      outlet: document.site.candidateOutlets.find((outlet) => outlet.id === answer.outlet)?.name ?? answer.outlet,
      plain: shortText(index, 'shortfall', answer.shortfall), margin: shortText(index, 'shortfallWithMargin', answer.shortfallWithMargin),
    },
  }));
  function shortText(index: number, field: string, short: number) {
    return <Figure result={`/results/gravity/${String(index)}/${field}`}>{t(short > 0 ? 'designs.shortBy' : 'designs.toSpare', { height: Math.abs(short) })}</Figure>;
  }
  const worst = Math.min(...evaluation.results.gravity.map((answer) => answer.shortfallWithMargin));
  return (
    <section>
      <Heading level={3} aside={q('level', Math.abs(worst))}>{t(worst > 0 ? 'designs.gravityShort' : 'designs.gravityWorks')}</Heading>
      <Table stacks="labelled" caption={t('designs.gravityTable')} captionUnseen columns={[{ key: 'outlet', head: t('designs.outlet') }, { key: 'plain', head: t('designs.withoutMargin'), figure: true }, { key: 'margin', head: t('designs.withMargin'), figure: true }]} rows={rows} />
    </section>
  );
}

function FreeboardTable({ document, evaluation }: AnswersProps) {
  const { t, q } = useText();
  const { freeboards } = evaluation.results;
  if (freeboards.length === 0) return null;
  const side = (index: number, [field, height]: readonly [string, number], [over, minutes]: readonly [string, number]) => (
    <Figure result={`/results/freeboards/${String(index)}/${height < 0 ? over : field}`}>{height < 0 ? t('designs.overSill', { minutes: minutes * 60 }) : q('height', height)}</Figure>
  );
  // The quick answer while the hand moves has no band: both ends stand on one run.
  const coming = evaluation.results.band === null && document.system.parts.length > 0;
  const band = (index: number, row: Freeboard) => coming ? t('designs.bandComing') : (
    <Figure result={`/results/freeboards/${String(index)}/lower`}>{row.lower < 0 ? t('designs.bandOver') : t('designs.band', { lower: row.lower, upper: row.upper })}</Figure>
  );
  return (
    <section>
      <Heading level={3}>{t('designs.freeboard')}</Heading>
      <Table stacks="labelled" caption={t('designs.freeboardTable')} captionUnseen
        columns={[
          { key: 'storm', head: t('designs.storm') }, { key: 'sill', head: t('designs.sill') }, { key: 'without', head: t('designs.withoutSystem'), figure: true },
          { key: 'with', head: t('designs.withSystem'), figure: true }, { key: 'band', head: t('designs.bandHead'), figure: true },
        ]}
        rows={freeboards.map((row, index) => ({
          key: `${row.sill}-${String(row.returnPeriod)}`,
          strong: row.returnPeriod === document.rain.designReturnPeriod,
          cells: {
            storm: t('designs.years', { years: row.returnPeriod }), sill: document.site.sills.find((sill) => sill.id === row.sill)?.name ?? row.sill,
            without: side(index, ['withoutSystem', row.withoutSystem], ['minutesOverSillWithoutSystem', row.minutesOverSillWithoutSystem]),
            with: side(index, ['onTwin', row.onTwin], ['minutesOverSill', row.minutesOverSill]), band: band(index, row),
          },
        }))} />
      <p className="faint measure">{t('designs.freeboardWhy')}</p>
    </section>
  );
}

function OutageLine({ evaluation }: { readonly evaluation: Evaluation }) {
  const { t } = useText();
  const { outage } = evaluation.results;
  return outage ? <p><Figure result="/results/outage/longestSafe">{t('designs.outage', { minutes: outage.longestSafe, years: outage.returnPeriod })}</Figure></p> : null;
}
