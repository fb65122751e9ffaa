import type { DesignDocument, Evaluation, RankedSwing } from '@yardfall/calc';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { rankedName, swingsShown } from '../model/ranking.ts';
import { Figure } from './Workings.tsx';

interface BandRankingProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
}

/** What makes the answer unsure, the weightiest first: what is worth another visit stands above what is not. */
export function BandRanking({ document, evaluation }: BandRankingProps) {
  const text = useText();
  const { t, q, say } = text;
  const { band } = evaluation.results;
  if (band === null) return null;
  const { deciding, rows, still } = swingsShown(band);
  const side = (index: number, end: 'low' | 'high', height: number) => (
    <Figure result={`/results/band/ranking/${String(index)}/${end}`}>{height < 0 ? t('studies.band.comesIn') : q('height', height)}</Figure>
  );
  const nameOf = (swing: RankedSwing) => rankedName(swing, document, text);
  return (
    <section className="stack">
      <Heading level={3} aside={t('designs.years', { years: band.returnPeriod })}>{t('studies.band.title')}</Heading>
      {deciding.length > 0
        ? <ul className="deciding">{deciding.map((swing) => <li key={`${swing.input} ${swing.at ?? ''}`}>{say(`decisions.decides.${swing.decides}`, { input: nameOf(swing), low: Math.max(0, swing.low), high: Math.max(0, swing.high) })}</li>)}</ul>
        : <p>{t('studies.band.nothingDecides')}</p>}
      <Table stacks="labelled" caption={t('studies.band.table')} captionUnseen
        columns={[
          { key: 'input', head: t('studies.band.input') }, { key: 'low', head: t('studies.band.low'), figure: true }, { key: 'high', head: t('studies.band.high'), figure: true }, { key: 'swing', head: t('studies.band.swing'), figure: true },
        ]}
        rows={rows.map(({ swing, index }) => ({
          key: `${swing.input} ${swing.at ?? ''}`, strong: swing.decides !== null,
          cells: {
            input: nameOf(swing), low: side(index, 'low', swing.low), high: side(index, 'high', swing.high),
            swing: <Figure result={`/results/band/ranking/${String(index)}/swing`}>{q('height', swing.swing)}</Figure>,
          },
        }))} />
      {still.length > 0 ? <p className="faint measure">{t('studies.band.still', { names: still.map(nameOf).join('; ') })}</p> : null}
      <p className="faint measure">{t('studies.band.why', { samples: band.samples })}</p>
    </section>
  );
}
