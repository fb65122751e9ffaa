import type { DesignDocument, Position } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { TextField } from '../../../../components/Field.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { freeId } from '../../model/defaults.ts';
import { putSpot } from '../../model/plan/operations.ts';

interface SpotPanelProps {
  readonly document: DesignDocument;
  /** A spot level with its level; otherwise only a place. */
  readonly spot: boolean;
  readonly at: Position | null;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly onPlace: (at: Position) => void;
  readonly onDone: () => void;
}

const newSpot = 'new';

/** A place by figures; for a spot level which one of the book it is, or a new one with its level. */
export function SpotPanel({ document, spot, at, edit, onPlace, onDone }: SpotPanelProps) {
  const { t } = useText();
  const unplaced = document.site.spotLevels.filter(({ position }) => position === null);
  const [which, setWhich] = useState<string>(unplaced[0]?.id ?? newSpot);
  const [name, setName] = useState('');
  const [level, setLevel] = useState<number | null>(null);
  const [across, setAcross] = useState<number | null>(at?.x ?? null);
  const [up, setUp] = useState<number | null>(at?.y ?? null);
  const known = unplaced.find(({ id }) => id === which) ?? null;
  const put = (event: FormEvent) => {
    event.preventDefault();
    if (across === null || up === null) return;
    const position = { x: across, y: up };
    if (!spot) return onPlace(position);
    const height = known?.level ?? level;
    if (height === null) return;
    const id = known?.id ?? freeId(document.site.spotLevels, 'S');
    edit(putSpot(document, known ? { ...known, position } : { id, name: name.trim() === '' ? id : name, level: height, station: null, position }));
    onDone();
  };
  return (
    <form className="plan-panel" onSubmit={put}>
      {spot && unplaced.length > 0 ? (
        <Select label={t('plan.spots')} value={which} onChange={setWhich} choices={[...unplaced.map(({ id, name: spotName }) => ({ value: id, label: spotName })), { value: newSpot, label: t('plan.addSpot') }]} />
      ) : null}
      {spot && !known ? <TextField label={t('plan.name')} value={name} onChange={(event) => setName(event.target.value)} /> : null}
      {spot && !known ? <LengthField label={t('plan.level')} kind="level" value={level} onChange={setLevel} /> : null}
      <LengthField label={t('plan.across')} value={across} onChange={setAcross} />
      <LengthField label={t('plan.up')} value={up} onChange={setUp} />
      <div className="row plan-wide"><Button type="submit" kind="main">{t(spot && !known ? 'plan.addSpot' : 'plan.putSpot')}</Button></div>
    </form>
  );
}
