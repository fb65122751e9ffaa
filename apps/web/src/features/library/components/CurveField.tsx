import type { CurvePoint } from '@yardfall/calc';
import { useState } from 'react';
import { TextArea } from '../../../components/Field.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { curveUnits, readCurveText, writeCurveText, type CurveUnits } from '../model/curveText.ts';

interface CurveFieldProps {
  readonly points: readonly CurvePoint[];
  /** Null while what stands there is no curve. */
  readonly onPoints: (points: readonly CurvePoint[] | null) => void;
}

const choices = (Object.keys(curveUnits) as CurveUnits[]).map((value) => ({ value, label: value.replace(' ', ', ') }));

/** A pump curve typed or pasted as the two columns of its datasheet; it says how it was read. */
export function CurveField({ points, onPoints }: CurveFieldProps) {
  const { t, say, units: system } = useText();
  const [units, setUnits] = useState<CurveUnits>(system === 'us' ? 'gpm ft' : 'L/s m');
  const [typed, setTyped] = useState(() => writeCurveText(points, units));
  const read = readCurveText(typed, units);
  const take = (text: string, by: CurveUnits) => {
    setTyped(text);
    setUnits(by);
    const now = readCurveText(text, by);
    onPoints(now.ok ? now.points : null);
  };
  return (
    <div className="stack">
      <Select label={t('library.curveUnits')} value={units} choices={choices} onChange={(by) => take(typed, by)} />
      <TextArea label={t('library.curve')} hint={t('library.curveHint')} rows={8} required value={typed} error={typed.trim() !== '' && !read.ok ? say(read.code, read.params) : undefined} onChange={(event) => take(event.target.value, units)} />
      <p className="field-reads" aria-live="polite">{read.ok ? t('library.curveReads', { count: read.points.length, head: read.shutOff, flow: read.runOut }) : ''}</p>
    </div>
  );
}
