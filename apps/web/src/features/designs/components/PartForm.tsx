import type { CurvePoint, DesignDocument, Part } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { readCurve, writeCurve } from '../model/curve.ts';
import { targetsOf } from '../model/defaults.ts';
import { fieldsOf, fieldValue, type PartField } from '../model/fields.ts';
import { LibraryTake } from './LibraryTake.tsx';
import { OutletQuestionsForm } from './OutletQuestionsForm.tsx';

interface PartFormProps {
  readonly document: DesignDocument;
  readonly part: Part;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly onRemoved: () => void;
}

/** The figures of one part, typed the trade's way; every change is one operation of the draft. */
export function PartForm({ document, part, edit, onRemoved }: PartFormProps) {
  const { t } = useText();
  const at = ['system', 'parts', `@${part.id}`];
  const set = (path: readonly string[], value: unknown) => {
    if (value !== null && value !== fieldValue(part, path)) edit([{ kind: 'replace', path: [...at, ...path], value: value as never }]);
  };
  const remove = () => {
    const orphans = document.system.parts.filter((other) => other.drainsTo === part.id);
    edit([...orphans.map((other): DraftOperation => ({ kind: 'connect', part: other.id, drainsTo: part.drainsTo })), { kind: 'remove', path: at }]);
    onRemoved();
  };
  return (
    <form className="part-form" onSubmit={(event) => event.preventDefault()} aria-label={part.name}>
      <TextField label={t('designs.field.name')} value={part.name} onChange={(event) => set(['name'], event.target.value)} />
      {part.kind === 'weepHole' ? null : (
        <Select label={t('designs.field.drainsTo')} value={part.drainsTo ?? 'nothing'} onChange={(to) => edit([{ kind: 'connect', part: part.id, drainsTo: to === 'nothing' ? null : to }])}
          choices={[{ value: 'nothing', label: t('designs.drainsToNothing') }, ...targetsOf(document, part).map((other) => ({ value: other.id, label: other.name }))]} />
      )}
      <LibraryTake document={document} part={part} edit={edit} />
      {fieldsOf(part.kind).map((field) => <FieldControl key={field.path.join('.')} part={part} field={field} set={set} />)}
      {part.kind === 'outlet' ? <OutletQuestionsForm outlet={part} set={set} /> : null}
      <div className="row"><Button kind="danger" onClick={remove}>{t('designs.removePart')}</Button></div>
    </form>
  );
}

interface ControlProps {
  readonly part: Part;
  readonly field: PartField;
  readonly set: (path: readonly string[], value: unknown) => void;
}

function FieldControl({ part, field, set }: ControlProps) {
  const { t, say } = useText();
  const value = fieldValue(part, field.path);
  const figure = typeof value === 'number' ? value : null;
  const label = t(field.label);
  const change = (next: unknown) => set(field.path, next);
  switch (field.kind) {
    case 'level':
    case 'length':
    case 'size': return <LengthField label={label} kind={field.kind} value={figure} onChange={change} />;
    case 'slope': return <NumberField label={label} value={figure} onChange={change} unit="%" perUnit={0.01} />;
    case 'count':
    case 'figure': return <NumberField label={label} value={figure} onChange={change} />;
    case 'yesNo': return <CheckField label={label} checked={value === true} onChange={(event) => change(event.target.checked)} />;
    case 'curve': return <CurveField label={label} value={value as readonly CurvePoint[]} onChange={change} />;
    default: return <Select label={label} value={String(value)} onChange={change} choices={field.kind.choices.map((choice) => ({ value: choice, label: say(`designs.choice.${choice}`) }))} />;
  }
}

function CurveField({ label, value, onChange }: { readonly label: string; readonly value: readonly CurvePoint[]; readonly onChange: (points: CurvePoint[]) => void }) {
  const { t, units } = useText();
  const [typed, setTyped] = useState(() => writeCurve(value, units));
  const read = readCurve(typed, units);
  return (
    <TextField label={label} hint={t(units === 'us' ? 'designs.curveHintUs' : 'designs.curveHintMetric')} value={typed} error={read ? undefined : t('designs.curveUnreadable')}
      onChange={(event) => setTyped(event.target.value)} onBlur={() => { if (read && typed !== writeCurve(value, units)) onChange(read); }} />
  );
}
