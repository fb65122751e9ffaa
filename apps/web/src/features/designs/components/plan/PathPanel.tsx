import type { Position } from '@yardfall/calc';
import { runLength } from '@yardfall/calc';
import { placeTowards, rectangle } from '@yardfall/drawing';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { NumberField } from '../../../../components/NumberField.tsx';
import { useText } from '../../../../lib/reader.tsx';

interface PathPanelProps {
  readonly kind: 'area' | 'line';
  readonly path: readonly Position[];
  readonly onPath: (path: readonly Position[]) => void;
  readonly onFinish: (points: readonly Position[]) => void;
}

/** What is being drawn, by figures: the next side by length and direction, or a whole rectangle. */
export function PathPanel({ kind, path, onPath, onFinish }: PathPanelProps) {
  const { t } = useText();
  const [length, setLength] = useState<number | null>(null);
  const [direction, setDirection] = useState<number | null>(path.length % 2 === 1 ? 90 : 0);
  const [across, setAcross] = useState<number | null>(null);
  const [up, setUp] = useState<number | null>(null);
  const last = path.at(-1);
  const next = (event: FormEvent) => {
    event.preventDefault();
    if (last && length !== null && length > 0 && direction !== null) onPath([...path, placeTowards(last, length, direction)]);
    else if (!last && across !== null && up !== null) onPath([{ x: across, y: up }]);
  };
  return (
    <form className="plan-panel" onSubmit={next}>
      {path.length > 0 ? <p className="plan-wide" aria-live="polite">{t('plan.corners', { count: path.length, length: runLength(path) })}</p> : null}
      {last ? (
        <>
          <LengthField label={t('plan.side')} value={length} onChange={setLength} />
          <NumberField label={t('plan.direction')} value={direction} onChange={setDirection} unit="°" decimals={1} />
        </>
      ) : (
        <>
          <LengthField label={t('plan.across')} value={across} onChange={setAcross} />
          <LengthField label={t('plan.up')} value={up} onChange={setUp} />
        </>
      )}
      <div className="row plan-wide">
        <Button type="submit">{t('plan.setCorner')}</Button>
        {path.length >= (kind === 'area' ? 3 : 2) ? <Button kind="main" onClick={() => onFinish(path)}>{t(kind === 'area' ? 'plan.close' : 'plan.end')}</Button> : null}
        {path.length > 0 ? <Button kind="text" onClick={() => onPath(path.slice(0, -1))}>{t('plan.takeBack')}</Button> : null}
        {path.length > 0 ? <Button kind="text" onClick={() => onPath([])}>{t('plan.drop')}</Button> : null}
      </div>
      {kind === 'area' && path.length <= 1 ? <Rectangle from={last ?? { x: across ?? 0, y: up ?? 0 }} onFinish={onFinish} /> : null}
    </form>
  );
}

function Rectangle({ from, onFinish }: { readonly from: Position; readonly onFinish: (points: readonly Position[]) => void }) {
  const { t } = useText();
  const [width, setWidth] = useState<number | null>(null);
  const [height, setHeight] = useState<number | null>(null);
  const ready = width !== null && width > 0 && height !== null && height > 0;
  return (
    <fieldset className="plan-rectangle plan-wide">
      <legend>{t('plan.rectangle')}</legend>
      <LengthField label={t('plan.width')} value={width} onChange={setWidth} />
      <LengthField label={t('plan.height')} value={height} onChange={setHeight} />
      <Button disabled={!ready} onClick={() => { if (ready) onFinish(rectangle(from, width, height)); }}>{t('plan.rectangle')}</Button>
    </fieldset>
  );
}
