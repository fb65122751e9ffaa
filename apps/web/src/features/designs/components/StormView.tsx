import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { pumpGraph, pumpTable, stormGraph, stormTable } from '@yardfall/drawing';
import { useId } from 'react';
import { Drawing } from '../../../components/Drawing.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { useText } from '../../../lib/reader.tsx';
import { DrawingTable } from './DrawingTable.tsx';

interface StormViewProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
  /** Index into the samples of the run; the section above shows the water of the same moment. */
  readonly moment: number;
  readonly onMoment: (sample: number) => void;
}

/** The design storm minute by minute; the slider moves the water here and in the section together. */
export function StormView({ document, evaluation, moment, onMoment }: StormViewProps) {
  const { t } = useText();
  const id = useId();
  const run = evaluation.results.storm;
  if (!run) return null;
  const cursor = run.start + moment * run.step;
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.stormTitle', { years: run.returnPeriod })}</Heading>
      <Drawing title={t('designs.stormPicture')} height={(width) => Math.min(420, Math.max(300, width * 0.4))}
        display={(size) => stormGraph(document, run, { ...size, cursor, sill: document.site.sills[0]?.id ?? null })} table={<DrawingTable table={stormTable(run)} />} />
      <label htmlFor={id}>{t('designs.moment')}</label>
      <input id={id} type="range" min={0} max={Math.max(0, run.pondLevel.length - 1)} value={moment} onChange={(event) => onMoment(Number(event.target.value))} />
    </section>
  );
}

export function PumpView({ evaluation }: { readonly evaluation: Evaluation }) {
  const { t, units } = useText();
  return evaluation.results.pumps.map((pump) => (
    <section key={pump.part} className="stack">
      <Heading level={3}>{t('designs.pumpTitle')}</Heading>
      <Drawing title={t('designs.pumpPicture')} height={(width) => Math.min(420, Math.max(280, width * 0.55))}
        display={(size) => pumpGraph(pump, { ...size, ...(units === 'metric' ? { flowUnit: 0.001, headUnit: 1 } : {}) })} table={<DrawingTable table={pumpTable(pump)} />} />
    </section>
  ));
}
