import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { peakTime, stormGraph, stormMargins, stormTable } from '@yardfall/drawing';
import { Drawing } from '../../../components/Drawing.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Slider } from '../../../components/Slider.tsx';
import { useText } from '../../../lib/reader.tsx';
import { samplesShown } from '../model/samplesShown.ts';
import { DrawingTable } from './DrawingTable.tsx';

/** A millimeter an hour, a meter, a liter a second. */
const metric = { rain: 0.001 / 3600, level: 1, flow: 0.001 };

interface StormViewProps {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation;
  /** Index into the samples of the run; the section above shows the water of the same moment. */
  readonly moment: number;
  readonly onMoment: (sample: number) => void;
}

/** The design storm minute by minute; the slider moves the water here and in the section together. */
export function StormView({ document, evaluation, moment, onMoment }: StormViewProps) {
  const { t, units } = useText();
  const run = evaluation.results.storm;
  if (!run) return null;
  const { first, last } = samplesShown(run);
  const cursor = run.start + moment * run.step;
  const level = run.pondLevel[moment] ?? run.maxPond;
  return (
    <section className="stack">
      <Heading level={3}>{t('designs.stormTitle', { years: run.returnPeriod })}</Heading>
      <Drawing title={t('designs.stormPicture')} height={(width) => Math.min(440, Math.max(360, width * 0.4))}
        display={(size) => stormGraph(document, run, { ...size, cursor, sill: document.site.sills[0]?.id ?? null, ...(units === 'metric' ? { units: metric } : {}) })} table={<DrawingTable table={stormTable(run)} />}>
        <Slider label={t('designs.moment')} min={first} max={last} value={moment} onChange={onMoment} margins={stormMargins} text={t('drawing.cursor', { time: cursor - peakTime(run), level })} />
      </Drawing>
    </section>
  );
}
