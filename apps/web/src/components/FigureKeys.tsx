import { useText } from '../lib/reader.tsx';
import { keyed, type FigureKey } from './figureKeys.ts';
import './FigureKeys.css';

interface FigureKeysProps {
  readonly text: string;
  readonly unit: 'ft' | 'in';
  /** Below nothing is a figure too. */
  readonly signed: boolean;
  readonly onText: (text: string) => void;
}

const fractions = [[1, '1/16'], [2, '1/8'], [8, '1/2']] as const;

/** What the number keyboard lacks, always beside the field so that nothing moves under a thumb: each fraction adds to what stands there. The field keeps the focus. */
export function FigureKeys({ text, unit, signed, onText }: FigureKeysProps) {
  const { t } = useText();
  const key = (words: string, name: string, press: FigureKey) => (
    <button key={words} type="button" className="figure-key" aria-label={name} onPointerDown={(event) => event.preventDefault()} onClick={() => onText(keyed(text, press))}>{words}</button>
  );
  const inches = unit === 'in' || text.includes("'");
  return (
    <>
      {inches ? fractions.map(([count, words]) => key(words, t('ui.length.key.fraction', { fraction: words }), { sixteenths: count })) : key(t('ui.length.key.feet'), t('ui.length.key.feetName'), 'feet')}
      {signed ? key('±', t('ui.length.key.minus'), 'minus') : null}
    </>
  );
}
