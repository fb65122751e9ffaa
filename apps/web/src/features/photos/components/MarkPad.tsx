import type { PhotoMark } from '@yardfall/contracts';
import { useEffect, useState, type PointerEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import { markOf, spotIn, type Spot } from '../model/marks.ts';
import { MarksOver } from './MarksOver.tsx';

interface MarkPadProps {
  readonly file: File;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PhotoMark[];
  readonly onMarks: (marks: readonly PhotoMark[]) => void;
}

const kinds = ['arrow', 'line', 'text'] as const;
const most = 12;

/** Arrows, lines and words drawn over a picture by the finger. */
export function MarkPad({ file, width, height, marks, onMarks }: MarkPadProps) {
  const { t } = useText();
  const [kind, setKind] = useState<PhotoMark['kind']>('arrow');
  const [words, setWords] = useState('');
  const [stroke, setStroke] = useState<{ readonly from: Spot; readonly to: Spot } | null>(null);
  const url = useAddress(file);
  const spot = (event: PointerEvent) => spotIn(event.currentTarget.getBoundingClientRect(), event);
  const drawn = stroke === null ? null : markOf(kind, stroke.from, stroke.to, words);
  const end = () => {
    if (drawn !== null && marks.length < most) onMarks([...marks, drawn]);
    setStroke(null);
  };
  return (
    <div className="stack">
      <Choices label={t('photos.marks')} value={kind} onChange={setKind} choices={kinds.map((value) => ({ value, label: t(`photos.mark.${value}`) }))} />
      {kind === 'text' ? <TextField label={t('photos.markWords')} hint={t('photos.markWordsHint')} maxLength={60} value={words} onChange={(event) => setWords(event.target.value)} /> : null}
      <div className="mark-pad"
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          setStroke({ from: spot(event), to: spot(event) });
        }}
        onPointerMove={(event) => {
          const to = spot(event); // the event is gone when the state is set
          setStroke((now) => (now === null ? null : { ...now, to }));
        }}
        onPointerUp={end} onPointerCancel={() => setStroke(null)}>
        {url === null ? null : <img src={url} alt={t('photos.toMark')} draggable={false} />}
        <MarksOver marks={drawn === null ? marks : [...marks, drawn]} width={width} height={height} />
      </div>
      {marks.length > 0 ? <div><Button kind="text" onClick={() => onMarks(marks.slice(0, -1))}>{t('photos.markBack')}</Button></div> : null}
    </div>
  );
}

/** Address of a file while it is shown. */
function useAddress(file: File): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    const made = URL.createObjectURL(file);
    // oxlint-disable-next-line react/set-state-in-effect -- the address lives as long as the effect
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return url;
}
