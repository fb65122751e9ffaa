import type { DesignDocument } from '@yardfall/calc';
import { lazy, Suspense, useState, type PointerEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { useText } from '../../../../lib/reader.tsx';
import type { BookStanding, FieldBook, Shot } from '../../model/fieldBook.ts';
import { pinAt, withPins } from '../../model/pinned.ts';

const PinPlan = lazy(() => import('./PinPlan.tsx').then((module) => ({ default: module.PinPlan })));

type Place = { readonly x: number; readonly y: number };

/** Half a side of the sheet and a square of it [m]: 60 ft each way in squares of 10 ft. */
const half = 18.288;
const square = 3.048;
const lines = Array.from({ length: 13 }, (_, n) => (n - 6) * square);

interface PinSheetProps {
  readonly jobId: string;
  readonly shot: Shot;
  readonly book: FieldBook;
  readonly standing: BookStanding;
  /** The design whose plan the pin stands on; null while none is drawn. */
  readonly plan: DesignDocument | null;
  readonly onPin: (pin: Place) => void;
}

/** Where the shot stands, by a tap on the plan of the job, or on squared paper while there is none, or by two figures. */
export function PinSheet({ jobId, shot, book, standing, plan, onPin }: PinSheetProps) {
  const { t } = useText();
  const [x, setX] = useState<number | null>(shot.pin?.x ?? null);
  const [y, setY] = useState<number | null>(shot.pin?.y ?? null);
  const put = (place: Place) => {
    const pin = pinAt(place);
    setX(pin.x);
    setY(pin.y);
    onPin(pin);
  };
  const paper = <SquaredPaper shot={shot} book={book} onTap={put} />;
  return (
    <fieldset className="stack">
      <legend className="field-legend">{t('surveys.yard.pin', { point: shot.point })}</legend>
      <p className="field-hint">{plan === null ? t('surveys.yard.pinHow', { square }) : t('surveys.yard.pinOnPlan')}</p>
      {plan === null ? paper : <Suspense fallback={paper}><PinPlan jobId={jobId} document={withPins(plan, book, standing, shot)} here={shot.pin} onTap={put} /></Suspense>}
      <div className="pin-figures">
        <LengthField label={t(plan === null ? 'surveys.yard.east' : 'plan.across')} value={x} onChange={setX} />
        <LengthField label={t(plan === null ? 'surveys.yard.north' : 'plan.up')} value={y} onChange={setY} />
        <Button size="crew" disabled={x === null || y === null || (x === shot.pin?.x && y === shot.pin.y)} onClick={() => { if (x !== null && y !== null) onPin({ x, y }); }}>{t('surveys.yard.pinIt')}</Button>
      </div>
    </fieldset>
  );
}

/** The house mark in the middle is the origin of the plan that is drawn later. */
function SquaredPaper({ shot, book, onTap }: { readonly shot: Shot; readonly book: FieldBook; readonly onTap: (pin: Place) => void }) {
  const tap = (event: PointerEvent<SVGSVGElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const along = (value: number, from: number, size: number) => (((value - from) / size) * 2 - 1) * half;
    onTap({ x: along(event.clientX, box.left, box.width), y: -along(event.clientY, box.top, box.height) });
  };
  const others = book.shots.filter(({ id, pin, struck }) => id !== shot.id && pin !== null && !struck);
  return (
    <svg className="pin-sheet" viewBox={`${String(-half)} ${String(-half)} ${String(2 * half)} ${String(2 * half)}`} onPointerUp={tap} aria-hidden="true">
      {lines.map((at) => <path key={at} className="pin-line" d={`M${String(at)} ${String(-half)}V${String(half)}M${String(-half)} ${String(at)}H${String(half)}`} />)}
      <path className="pin-house" d="M-1 0H1M0 -1V1" />
      {others.map((other) => other.pin && <circle key={other.id} className="pin-other" cx={other.pin.x} cy={-other.pin.y} r="0.5" />)}
      {shot.pin && <circle className="pin-here" cx={shot.pin.x} cy={-shot.pin.y} r="0.8" />}
    </svg>
  );
}
