import { measureOf, runLength, sidesOf, type DesignDocument, type PlanShape } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { removePoint, setSide } from '@yardfall/drawing';
import { Button } from '../../../../components/Button.tsx';
import { TextField } from '../../../../components/Field.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { usesOf } from '../../model/plan/hand.ts';
import { UtilityFields } from './UtilityFields.tsx';
import { catchmentFrom, changeShape, isSurface, removeShape } from '../../model/plan/operations.ts';

interface ShapePanelProps {
  readonly document: DesignDocument;
  readonly shape: PlanShape;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly onRemoved: () => void;
}

/** One shape: its name, what it is, what it measures, and its sides by figures. */
export function ShapePanel({ document, shape, edit, onRemoved }: ShapePanelProps) {
  const { t } = useText();
  const change = (next: PlanShape) => edit(changeShape(document, next));
  const sides = shape.kind === 'place' ? [] : sidesOf(shape.points, shape.kind === 'area');
  const targets = targetsOf(document, shape);
  return (
    <form className="plan-panel" aria-label={shape.name} onSubmit={(event) => event.preventDefault()}>
      <TextField label={t('plan.name')} value={shape.name} onChange={(event) => change({ ...shape, name: event.target.value })} />
      <Select label={t('plan.use')} value={shape.use} onChange={(use) => change({ ...shape, use })} choices={usesOf[shape.kind].map((value) => ({ value, label: t(`plan.use.${value}`) }))} />
      {targets.length > 0 ? (
        <Select label={t('plan.of')} value={shape.of ?? 'nothing'} onChange={(of) => change({ ...shape, of: of === 'nothing' ? null : of })}
          choices={[{ value: 'nothing', label: t('plan.ofNothing') }, ...targets.map(({ id, name }) => ({ value: id, label: name }))]} />
      ) : null}
      {shape.use === 'utility' ? <UtilityFields document={document} shape={shape} edit={edit} /> : null}
      {shape.kind === 'place' ? null : <p className="plan-wide"><strong>{t(`plan.measure.${shape.kind === 'area' ? 'area' : 'length'}`, { value: measureOf(shape) })}</strong></p>}
      {sides.map(([from, to], at) => (
        <LengthField key={at} label={t('plan.sideNumber', { number: at + 1 })} value={Math.round(runLength([from, to]) * 1e4) / 1e4}
          onChange={(length) => { if (length !== null && length > 0 && Math.abs(length - runLength([from, to])) > 1e-4) change(setSide(shape, at, length)); }} />
      ))}
      <div className="row plan-wide">
        {isSurface(shape) && shape.of === null ? <Button kind="main" onClick={() => edit(catchmentFrom(document, shape))}>{t('plan.newCatchment')}</Button> : null}
        {shape.kind === 'place' ? null : shape.points.map((_, at) => {
          const less = removePoint(shape, at);
          return less ? <Button key={at} kind="text" onClick={() => change(less)}>{t('plan.removeCorner', { number: at + 1 })}</Button> : null;
        })}
        <Button kind="danger" onClick={() => { edit(removeShape(shape)); onRemoved(); }}>{t('plan.remove')}</Button>
      </div>
    </form>
  );
}

/** What a shape of this kind can stand for. */
function targetsOf({ site, system }: DesignDocument, { kind, use }: PlanShape): readonly { readonly id: string; readonly name: string }[] {
  if (kind === 'area') return use === 'lot' || use === 'house' || use === 'septic' ? [] : site.catchments;
  if (kind === 'place') return use === 'sill' ? site.sills : use === 'part' ? system.parts : [];
  if (use === 'utility') return site.utilities;
  return use === 'wall' || use === 'measure' ? [] : system.parts.filter((part) => 'length' in part);
}
