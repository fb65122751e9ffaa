import type { DesignDocument, Evaluation, PumpResult } from '@yardfall/calc';
import { pumpGraph, pumpTable } from '@yardfall/drawing';
import { useMemo } from 'react';
import { Drawing } from '../../../components/Drawing.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useLibraryEntries } from '../api/library.ts';
import { nameOf } from '../model/editWords.ts';
import { pumpAlternatives } from '../model/pumpAlternatives.ts';
import { DrawingTable } from './DrawingTable.tsx';
import { Figure } from './Workings.tsx';

interface PumpViewProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
}

/** Each pump on its line, with the pumps of the library that come nearest beside it. */
export function PumpView({ document, evaluation }: PumpViewProps) {
  return evaluation.results.pumps.map((pump, index) => <OnePump key={pump.part} document={document} pump={pump} place={`/results/pumps/${String(index)}`} />);
}

function OnePump({ document, pump, place }: { readonly document: DesignDocument; readonly pump: PumpResult; readonly place: string }) {
  const { t, q, units } = useText();
  const entries = useLibraryEntries();
  const others = useMemo(() => pumpAlternatives(document, pump.part, entries), [document, pump.part, entries]);
  const curves = others.map(({ name, duty }) => ({ name, curve: duty.pumpCurve }));
  const figure = (field: string, text: string) => <Figure result={`${place}/dutyAtOff/${field}`}>{text}</Figure>;
  const drawn = { key: 'drawn', strong: true, cells: {
    name: t('studies.pumps.drawn', { name: nameOf([document], pump.part) }), flow: figure('flow', q('flow', pump.dutyAtOff.flow)), head: figure('head', q('head', pump.dutyAtOff.head)), velocity: figure('velocity', q('velocity', pump.dutyAtOff.velocity)),
  } };
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.pumpTitle')}</Heading>
      <Drawing title={t('designs.pumpPicture')} height={(width) => Math.min(420, Math.max(280, width * 0.55))}
        display={(size) => pumpGraph(pump, { ...size, others: curves, ...(units === 'metric' ? { flowUnit: 0.001, headUnit: 1 } : {}) })} table={<DrawingTable table={pumpTable(pump)} />} />
      {others.length === 0 ? null : (
        <Table stacks="labelled" caption={t('studies.pumps.others')}
          columns={[{ key: 'name', head: t('studies.pumps.name') }, { key: 'flow', head: t('studies.pumps.flow'), figure: true }, { key: 'head', head: t('studies.pumps.head'), figure: true }, { key: 'velocity', head: t('studies.pumps.velocity'), figure: true }]}
          rows={[drawn, ...others.map(({ entry, name, duty: { dutyAtOff: { flow, head, velocity } } }) => ({
            key: entry, cells: { name, flow: flow > 0 ? q('flow', flow) : t('studies.pumps.cannot'), head: q('head', head), velocity: q('velocity', velocity) },
          }))]} />
      )}
    </section>
  );
}
