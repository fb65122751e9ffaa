import type { Construction, DesignDocument, Electrical } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { CheckField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { startingElectrical, worksFor } from '../model/works.ts';

interface ConstructionFormProps {
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

const flags = ['treesNear', 'poolWithin3m', 'trenchNearFooting', 'foundationWithin1ft'] as const;

/** What is cut and dug, the power at the pump, and what stands near. The checklist and the quantities follow from it. */
export function ConstructionForm({ document, edit }: ConstructionFormProps) {
  const { t, units } = useText();
  const { construction } = document;
  const set = (key: keyof Construction, value: unknown) => edit([{ kind: 'replace', path: ['construction', key], value: value as never }]);
  return (
    <div className="stack">
      <p className="faint measure">{t('designs.constructionWhy')}</p>
      <div className="row"><Button onClick={() => edit(worksFor(document))}>{t('designs.takeWorks')}</Button></div>
      {construction.slabCuts.map((cut) => (
        <div key={cut.id} className="row">
          <LengthField label={t('designs.slabThickness', { name: cut.name })} kind="size" value={cut.thickness} onChange={(value) => { if (value !== null) edit([{ kind: 'replace', path: ['construction', 'slabCuts', `@${cut.id}`, 'thickness'], value }]); }} />
          <Select label={t('designs.reinforcement')} value={cut.reinforcement} choices={(['none', 'mesh', 'bar'] as const).map((value) => ({ value, label: t(`designs.reinforcement.${value}`) }))}
            onChange={(value) => edit([{ kind: 'replace', path: ['construction', 'slabCuts', `@${cut.id}`, 'reinforcement'], value }])} />
        </div>
      ))}
      {construction.trenches.map((trench) => (
        <LengthField key={trench.id} label={t('designs.trenchDepth', { name: trench.name })} value={trench.depth}
          onChange={(value) => { if (value !== null) edit([{ kind: 'replace', path: ['construction', 'trenches', `@${trench.id}`, 'depth'], value }]); }} />
      ))}
      <NumberField label={t('designs.sodArea')} value={construction.restoration.sodArea} unit={units === 'us' ? 'ft²' : 'm²'} perUnit={units === 'us' ? 0.09290304 : 1} decimals={1}
        onChange={(value) => { if (value !== null) set('restoration', { ...construction.restoration, sodArea: value }); }} />
      {flags.map((flag) => <CheckField key={flag} label={t(`designs.flag.${flag}`)} checked={construction[flag]} onChange={(event) => set(flag, event.target.checked)} />)}
      <ElectricalForm electrical={construction.electrical} set={(value) => set('electrical', value)} />
    </div>
  );
}

function ElectricalForm({ electrical, set }: { readonly electrical: Electrical | null; readonly set: (value: Electrical | null) => void }) {
  const { t } = useText();
  if (!electrical) return <div className="row"><Button onClick={() => set(startingElectrical)}>{t('designs.addElectrical')}</Button></div>;
  const change = (part: Partial<Electrical>) => set({ ...electrical, ...part });
  return (
    <fieldset className="stack">
      <legend>{t('designs.electrical')}</legend>
      <p className="field-hint">{t('designs.electricalCaution')}</p>
      <CheckField label={t('designs.dedicatedCircuit')} checked={electrical.dedicatedCircuit} onChange={(event) => change({ dedicatedCircuit: event.target.checked })} />
      <CheckField label={t('designs.gfci')} checked={electrical.gfci} onChange={(event) => change({ gfci: event.target.checked })} />
      <CheckField label={t('designs.extensionCord')} checked={electrical.extensionCord} onChange={(event) => change({ extensionCord: event.target.checked })} />
      <Select label={t('designs.alarm')} value={electrical.alarm} onChange={(alarm) => change({ alarm })} choices={(['differentCircuit', 'sameCircuitBattery', 'none'] as const).map((value) => ({ value, label: t(`designs.alarm.${value}`) }))} />
      <Select label={t('designs.backup')} value={electrical.backup} onChange={(backup) => change({ backup })} choices={(['none', 'battery', 'secondPump', 'generatorInlet'] as const).map((value) => ({ value, label: t(`designs.backup.${value}`) }))} />
      <LengthField label={t('designs.runLength')} value={electrical.runLength} onChange={(runLength) => { if (runLength !== null) change({ runLength }); }} />
    </fieldset>
  );
}
