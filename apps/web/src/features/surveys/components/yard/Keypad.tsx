import { useText } from '../../../../lib/reader.tsx';
import { entryUnits, fractionOf, pressed, switched, type Digit, type Entry, type Key } from '../../model/keypad.ts';

interface KeypadProps {
  /** What the keys write. */
  readonly label: string;
  readonly entry: Entry;
  readonly onEntry: (entry: Entry) => void;
  /** A rod that is read directly reads below the mark too. */
  readonly signed: boolean;
}

const rows: readonly (readonly Digit[])[] = [['1', '2', '3'], ['4', '5', '6'], ['7', '8', '9']];

/** Our own keys: the phone's keyboard covers half the page and has small ones. */
export function Keypad({ label, entry, onEntry, signed }: KeypadProps) {
  const { t } = useText();
  const press = (key: Key) => onEntry(pressed(entry, key));
  const digit = (key: Digit) => <button key={key} type="button" className="key" onClick={() => press({ key })}>{key}</button>;
  const [first = [], second = [], third = []] = rows;
  return (
    <div className="keypad" role="group" aria-label={label}>
      {first.map(digit)}
      <button type="button" className={signed ? 'key key-word' : 'key key-word key-tall'} aria-label={t('surveys.yard.key.back')} onClick={() => press({ key: 'back' })}>{'⌫'}</button>
      {second.map(digit)}
      {signed ? <button type="button" className="key key-word" aria-label={t('surveys.yard.key.minus')} onClick={() => press({ key: 'minus' })}>{'±'}</button> : null}
      {third.map(digit)}
      <UnitKey entry={entry} onEntry={onEntry} />
      {entry.unit === 'inch' ? (
        <>
          <button type="button" className="key key-word" onClick={() => press({ key: 'feet' })}>{t('surveys.yard.key.feet')}</button>
          {digit('0')}
          <button type="button" className="key key-word" aria-label={t('surveys.yard.key.sixteenth')} onClick={() => press({ key: 'sixteenth' })}>{'+1/16'}</button>
          {[2, 4, 8, 12].map((count) => (
            <button key={count} type="button" className="key key-word" aria-label={t('surveys.yard.key.fraction', { fraction: fractionOf(count) })} onClick={() => press({ key: 'sixteenths', count })}>{fractionOf(count)}</button>
          ))}
        </>
      ) : (
        <>
          <button type="button" className="key" aria-label={t('surveys.yard.key.point')} onClick={() => press({ key: 'point' })}>{'.'}</button>
          <button type="button" className="key key-wide" onClick={() => press({ key: '0' })}>{'0'}</button>
        </>
      )}
    </div>
  );
}

/** One key goes round the units; what is written stays what it is. */
function UnitKey({ entry, onEntry }: Pick<KeypadProps, 'entry' | 'onEntry'>) {
  const { t } = useText();
  const after = entryUnits[(entryUnits.indexOf(entry.unit) + 1) % entryUnits.length] ?? 'foot';
  return (
    <button type="button" className="key key-unit key-tall" onClick={() => onEntry(switched(entry, after))}>
      <span className="unseen">{t('surveys.yard.unit')} </span>{t(`surveys.yard.unit.${entry.unit}`)}
    </button>
  );
}
