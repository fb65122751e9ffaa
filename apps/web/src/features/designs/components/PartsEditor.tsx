import type { DesignDocument, PartKind } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { addable, newPart } from '../model/defaults.ts';
import { gravitySystem, pumpedSystem } from '../model/layout.ts';
import { CatchmentTable } from './CatchmentTable.tsx';
import { ConstructionForm } from './ConstructionForm.tsx';
import { PartForm } from './PartForm.tsx';

interface PartsEditorProps {
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
  readonly selected: string | null;
  readonly onSelect: (part: string | null) => void;
}

/** The parts in the order in which the water meets them, the chosen one with its figures, and the surfaces that feed them. */
export function PartsEditor({ document, edit, selected, onSelect }: PartsEditorProps) {
  const { t } = useText();
  const part = document.system.parts.find((entry) => entry.id === selected) ?? null;
  // Judged once: the fold must not close under the hand that adds the first surface.
  const [bare] = useState(document.site.catchments.length === 0);
  const layOut = (parts: ReturnType<typeof pumpedSystem>) => {
    if (parts.length > 0) edit(parts.map((made): DraftOperation => ({ kind: 'add', path: ['system', 'parts', '-'], value: made as never })));
  };
  return (
    <div className="stack">
      <Heading level={3}>{t('designs.parts')}</Heading>
      {document.system.parts.length === 0 ? (
        <Empty what={t('designs.noParts')} why={t('designs.noPartsWhy')} step={
          <>
            <Button kind="main" onClick={() => layOut(pumpedSystem(document))}>{t('designs.layOutPumped')}</Button>
            <Button onClick={() => layOut(gravitySystem(document))}>{t('designs.layOutGravity')}</Button>
          </>
        } />
      ) : null}
      <div className="parts">
        <ol className="part-list" aria-label={t('designs.parts')}>
          {document.system.parts.map((entry) => (
            <li key={entry.id}>
              <button type="button" aria-pressed={entry.id === selected} onClick={() => onSelect(entry.id === selected ? null : entry.id)}>
                <span>{entry.name}</span> <span className="faint">{t(`designs.kind.${entry.kind}`)}</span>
              </button>
            </li>
          ))}
        </ol>
        {part ? <PartForm key={part.id} document={document} part={part} edit={edit} onRemoved={() => onSelect(null)} /> : null}
      </div>
      <AddPart document={document} edit={edit} onSelect={onSelect} />
      <details className="fold" open={bare}><summary>{t('designs.catchments')}</summary><CatchmentTable document={document} edit={edit} /></details>
      <details className="fold"><summary>{t('designs.construction')}</summary><ConstructionForm document={document} edit={edit} /></details>
    </div>
  );
}

function AddPart({ document, edit, onSelect }: Omit<PartsEditorProps, 'selected'>) {
  const { t } = useText();
  const [kind, setKind] = useState<PartKind>('pipe');
  const add = () => {
    const part = newPart(document, kind, t(`designs.kind.${kind}`));
    if (!part) return;
    edit([{ kind: 'add', path: ['system', 'parts', '-'], value: part as never }]);
    onSelect(part.id);
  };
  return (
    <div className="row">
      <Select label={t('designs.addKind')} value={kind} onChange={setKind} choices={addable.map((value) => ({ value, label: t(`designs.kind.${value}`) }))} />
      <Button onClick={add}>{t('designs.addPart')}</Button>
    </div>
  );
}
