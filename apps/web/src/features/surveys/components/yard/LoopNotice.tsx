import { explainMisclosure, type RodUnit } from '@yardfall/calc';
import { Notice } from '../../../../components/Notice.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { levelBookOf, standingShots, type BookStanding, type FieldBook } from '../../model/fieldBook.ts';
import type { EntryUnit } from '../../model/keypad.ts';

/** A loop that is good for eight set-ups is not for more (ours). */
const mostSetUps = 8;

/** Before they leave: whether the loop closes, over how many set-ups, and which reading would explain it if it does not. */
export function LoopNotice({ book, standing, unit }: { readonly book: FieldBook; readonly standing: BookStanding; readonly unit: EntryUnit }) {
  const { t } = useText();
  const { reduced, closed } = standing;
  if (!closed || reduced.misclosure === null) return null;
  const misclosure = Math.abs(reduced.misclosure);
  if (reduced.verdict === 'pass') {
    return <Notice severity="note"><p>{t('surveys.yard.done', { misclosure, allowable: reduced.allowable.pass, n: reduced.setUps })}</p>{reduced.setUps > mostSetUps ? <p>{t('surveys.yard.manySetUps', { most: mostSetUps })}</p> : null}</Notice>;
  }
  if (reduced.verdict === 'warn') return <Notice severity="caution"><p>{t('surveys.yard.doubtful', { misclosure, allowable: reduced.allowable.pass })}</p></Notice>;
  return (
    <Notice severity="stop" title={t('surveys.yard.stay', { misclosure })}>
      <Suspects book={book} unit={unit} />
    </Notice>
  );
}

function Suspects({ book, unit }: { readonly book: FieldBook; readonly unit: RodUnit }) {
  const { t } = useText();
  const { single, suspects } = explainMisclosure(levelBookOf(book), unit, undefined, book.rod);
  if (single !== null) {
    return <p>{t('surveys.yard.suspect', { sight: `surveys.yard.sight.${single.sight}`, point: single.point, value: single.value, meant: single.meant, kind: `surveys.yard.slip.${single.kind}` })}</p>;
  }
  if (suspects.length === 0 || standingShots(book).length < 3) return <p>{t('surveys.yard.noSuspect')}</p>;
  return <p>{t('surveys.yard.suspects', { n: suspects.length, points: [...new Set(suspects.map(({ point }) => point))].join(', ') })}</p>;
}
