import { mostMarks, type PhotoMark } from '@yardfall/contracts';
import { useState, type PointerEvent } from 'react';
import { Button } from '../Button.tsx';
import { Choices } from '../Choices.tsx';
import { TextField } from '../Field.tsx';
import { useText } from '../../lib/reader.tsx';
import { markOf, spotIn, type Spot } from './marks.ts';
import { MarksOver } from './MarksOver.tsx';

interface MarkPadProps {
  /** Address of the picture; null until there is one. */
  readonly src: string | null;
  readonly onUnseen?: () => void;
  /** What lies over it already and stays. */
  readonly under?: readonly PhotoMark[];
  readonly marks: readonly PhotoMark[];
  readonly onMarks: (marks: readonly PhotoMark[]) => void;
}

const kinds = ['arrow', 'line', 'text'] as const;

/** Arrows, lines and words drawn over a picture by the finger. */
export function MarkPad({ src, onUnseen, under = [], marks, onMarks }: MarkPadProps) {
  const { t } = useText();
  const [kind, setKind] = useState<PhotoMark['kind']>('arrow');
  const [words, setWords] = useState('');
  const [stroke, setStroke] = useState<{ readonly from: Spot; readonly to: Spot } | null>(null);
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  const spot = (event: PointerEvent) => spotIn(event.currentTarget.getBoundingClientRect(), event);
  const drawn = stroke === null ? null : markOf(kind, stroke.from, stroke.to, words);
  const end = () => {
    if (drawn !== null && marks.length < mostMarks) onMarks([...marks, drawn]);
    setStroke(null);
  };
  return (
    <div className="stack">
      <Choices label={t('photos.marks')} look="crew" value={kind} onChange={setKind} choices={kinds.map((value) => ({ value, label: t(`photos.mark.${value}`) }))} />
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
        {src === null ? null : <img src={src} alt={t('photos.toMark')} draggable={false} onError={onUnseen} onLoad={({ currentTarget }) => setSize({ width: currentTarget.naturalWidth, height: currentTarget.naturalHeight })} />}
        {size === null ? null : <MarksOver marks={[...under, ...marks, ...(drawn === null ? [] : [drawn])]} {...size} />}
      </div>
      {marks.length > 0 ? <div><Button kind="text" size="crew" onClick={() => onMarks(marks.slice(0, -1))}>{t('photos.markBack')}</Button></div> : null}
    </div>
  );
}
