import { Button } from '../../../../components/Button.tsx';
import { Dialog } from '../../../../components/Dialog.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { standingShots, type FieldBook, type PointRole } from '../../model/fieldBook.ts';

interface ElseDialogProps {
  readonly open: boolean;
  readonly book: FieldBook;
  readonly onClose: () => void;
  readonly onChoose: (what: PointRole | 'turn' | 'close') => void;
}

const roles: readonly PointRole[] = ['sill', 'lowSpot', 'rim', 'collectorInvert', 'outlet', 'grade', 'other'];

/** Anything else that the rod can stand on, the move of the instrument, and the closing shot. */
export function ElseDialog({ open, book, onClose, onChoose }: ElseDialogProps) {
  const { t } = useText();
  const standing = standingShots(book);
  const begun = standing.length > 0;
  const turns = book.mode === 'heightOfInstrument' && begun && standing.at(-1)?.kind !== 'foresight';
  return (
    <Dialog open={open} title={t('surveys.yard.elseTitle')} onClose={onClose}>
      <div className="yard-choices">
        {begun ? roles.map((role) => <Button key={role} size="crew" onClick={() => onChoose(role)}>{t(`surveys.role.${role}`)}</Button>) : null}
        {turns ? <Button size="crew" onClick={() => onChoose('turn')}>{t('surveys.yard.turn')}</Button> : null}
        {begun ? <Button size="crew" onClick={() => onChoose('close')}>{t('surveys.yard.close', { point: book.benchMark.name })}</Button> : null}
      </div>
    </Dialog>
  );
}
