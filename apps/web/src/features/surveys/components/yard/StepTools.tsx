import type { StepTool } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { NumberField } from '../../../../components/NumberField.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { drainFigures, hoseOf, listOf, percolationOf, slabHolesWanted, usualBucket, usualDrain, usualHole, withNext, type Figures } from '../../model/stepTools.ts';
import { Counter, Stopwatch } from './Stopwatch.tsx';

interface ToolProps {
  readonly name: string;
  readonly figures: Figures;
  readonly onFigures: (figures: Figures) => void;
  /** Of the hose that was measured before [m3/s]. */
  readonly hoseFlow: number | null;
}

/** What a step measures, times or counts. */
export function StepTools({ tool, ...props }: ToolProps & { readonly tool: StepTool }) {
  const Tool = tools[tool];
  return <Tool {...props} />;
}

const tools: Readonly<Record<StepTool, (props: ToolProps) => React.ReactNode>> = {
  hose: Hose, drain: Drain, percolation: Percolation, waterHole: WaterHole, slabHoles: SlabHoles, gutters: Gutters, camera: Camera, outline: () => null,
};

function set({ figures, onFigures }: ToolProps, name: string) {
  return (value: number | null) => {
    const { [name]: _before, ...rest } = figures;
    onFigures(value === null ? rest : { ...rest, [name]: value });
  };
}

function Hose(props: ToolProps) {
  const { t, units, q } = useText();
  const { figures, onFigures, name } = props;
  const hose = hoseOf(figures);
  return (
    <div className="stack">
      <NumberField label={t('surveys.tool.bucket')} value={figures['bucket'] ?? usualBucket} unit={units === 'us' ? 'gal' : 'L'} perUnit={units === 'us' ? usualBucket / 5 : 0.001} onChange={set(props, 'bucket')} />
      <Stopwatch name={name} onStop={(fill) => onFigures(withNext(figures, { fill }))} />
      {hose === null ? null : (
        <>
          <p>{t('surveys.tool.fills', { list: listOf(figures, 'fill').map((seconds) => q('seconds', seconds)).join(', ') })}</p>
          <p>{t('surveys.tool.flow', { flow: hose.flow, spread: hose.spread })} {t(hose.good ? 'surveys.tool.flowGood' : 'surveys.tool.flowMore')}</p>
        </>
      )}
    </div>
  );
}

function Drain(props: ToolProps) {
  const { t, q } = useText();
  const { figures, onFigures, name, hoseFlow } = props;
  const result = drainFigures(figures, hoseFlow);
  const { seconds } = figures;
  return (
    <div className="stack">
      {hoseFlow === null ? <p className="faint">{t('surveys.tool.hoseFirst')}</p> : null}
      <LengthField kind="size" label={t('surveys.tool.diameter')} value={figures['diameter'] ?? usualDrain} onChange={set(props, 'diameter')} />
      <Stopwatch name={name} onStop={(taken) => onFigures({ ...figures, seconds: taken })} />
      {seconds === undefined ? null : <p>{q('minutes', seconds)}</p>}
      {result['volume'] === undefined || result['blindLength'] === undefined ? null : <p>{t('surveys.tool.blind', { volume: result['volume'], length: result['blindLength'] })}</p>}
    </div>
  );
}

function Percolation(props: ToolProps) {
  const { t } = useText();
  const { figures, onFigures, name } = props;
  const [start, setStart] = useState<number | null>(listOf(figures, 'start').at(-1) ?? usualHole);
  const [drop, setDrop] = useState<number | null>(null);
  const [interval, setInterval] = useState<number | null>(null);
  const result = percolationOf(figures);
  const intervals = listOf(figures, 'interval');
  const ready = start !== null && drop !== null && interval !== null && drop > 0 && drop < start * 2;
  return (
    <div className="stack">
      <LengthField kind="size" label={t('surveys.tool.hole')} value={figures['hole'] ?? usualHole} onChange={set(props, 'hole')} />
      <LengthField kind="height" label={t('surveys.tool.startDepth')} value={start} onChange={setStart} />
      <Stopwatch name={name} onStop={setInterval} />
      <NumberField label={t('surveys.tool.elapsed')} value={interval} unit="min" perUnit={60} decimals={1} onChange={setInterval} />
      <LengthField kind="height" label={t('surveys.tool.drop')} value={drop} onChange={setDrop} />
      <Button size="crew" wide disabled={!ready} onClick={() => { if (ready) onFigures(withNext(figures, { interval, start, drop })); setDrop(null); setInterval(null); }}>{t('surveys.tool.reading')}</Button>
      {intervals.length === 0 ? null : <ol className="why-kit">{intervals.map((time, n) => <li key={n}>{t('surveys.tool.readingOf', { drop: listOf(figures, 'drop')[n] ?? 0, time })}</li>)}</ol>}
      {result === null ? null : (
        <p>
          {t('surveys.tool.soaks', { measured: result.measured, design: result.design })} {t(result.settled ? 'surveys.tool.settled' : 'surveys.tool.unsettled')} {result.usable ? '' : t('surveys.tool.unusable')}{' '}
          <span className="faint">{t('surveys.tool.source')}</span>
        </p>
      )}
    </div>
  );
}

function WaterHole(props: ToolProps) {
  const { t } = useText();
  const { figures } = props;
  return (
    <div className="stack">
      <LengthField label={t('surveys.tool.holeDepth')} value={figures['holeDepth'] ?? null} onChange={set(props, 'holeDepth')} />
      <LengthField label={t('surveys.tool.pitBottom')} hint={t('surveys.tool.pitBottomWhy')} value={figures['pitBottom'] ?? null} onChange={set(props, 'pitBottom')} />
      <LengthField label={t('surveys.tool.waterDepth')} optional value={figures['waterDepth'] ?? null} onChange={set(props, 'waterDepth')} />
      <NumberField label={t('surveys.tool.hours')} value={figures['after'] ?? null} unit="h" perUnit={3600} decimals={1} onChange={set(props, 'after')} />
    </div>
  );
}

function SlabHoles(props: ToolProps) {
  const { t } = useText();
  const { figures } = props;
  const holes = figures['holes'] ?? 0;
  const wanted = slabHolesWanted(figures['cut'] ?? 0);
  return (
    <div className="stack">
      <LengthField label={t('surveys.tool.cut')} value={figures['cut'] ?? null} onChange={set(props, 'cut')} />
      <Counter label={t('surveys.tool.holes')} value={holes} onChange={set(props, 'holes')} />
      {figures['cut'] !== undefined && holes < wanted ? <p>{t('surveys.tool.moreHoles', { n: wanted })}</p> : null}
      <LengthField kind="size" label={t('surveys.tool.thinnest')} value={figures['thinnest'] ?? null} onChange={set(props, 'thinnest')} />
      <LengthField kind="size" label={t('surveys.tool.thickest')} value={figures['thickest'] ?? null} onChange={set(props, 'thickest')} />
    </div>
  );
}

function Gutters(props: ToolProps) {
  const { t, units } = useText();
  const { figures } = props;
  return (
    <div className="stack">
      <Counter label={t('surveys.tool.leaders')} value={figures['leaders'] ?? 0} onChange={set(props, 'leaders')} />
      <Counter label={t('surveys.tool.leadersOnSlab')} value={figures['leadersOnSlab'] ?? 0} onChange={set(props, 'leadersOnSlab')} />
      <LengthField label={t('surveys.tool.withoutGutter')} value={figures['withoutGutter'] ?? null} onChange={set(props, 'withoutGutter')} />
      <NumberField label={t('surveys.tool.roofArea')} optional value={figures['roofArea'] ?? null} unit={units === 'us' ? 'sq ft' : 'm²'} perUnit={units === 'us' ? 0.09290304 : 1} onChange={set(props, 'roofArea')} />
    </div>
  );
}

function Camera(props: ToolProps) {
  const { t } = useText();
  return <LengthField label={t('surveys.tool.cameraStop')} optional value={props.figures['stop'] ?? null} onChange={set(props, 'stop')} />;
}
