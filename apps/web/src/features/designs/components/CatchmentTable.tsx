import type { Catchment, DesignDocument, DrainsTo, Surface } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { newCatchment, surfaceDefaults, surfaces } from '../model/catchments.ts';

interface CatchmentTableProps {
  readonly document: DesignDocument;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

/** Every surface whose rain ends up here, how much of it runs off, and where it goes. */
export function CatchmentTable({ document, edit }: CatchmentTableProps) {
  const { t } = useText();
  const add = () => edit([{ kind: 'add', path: ['site', 'catchments', '-'], value: newCatchment(document, t('designs.newCatchment')) as never }]);
  return (
    <section className="stack" aria-label={t('designs.catchments')}>
      <p className="faint measure">{t('designs.catchmentsWhy')}</p>
      {document.site.catchments.map((catchment) => <CatchmentRow key={catchment.id} document={document} catchment={catchment} edit={edit} />)}
      <div className="row"><Button onClick={add}>{t('designs.addCatchment')}</Button></div>
    </section>
  );
}

function CatchmentRow({ document, catchment, edit }: CatchmentTableProps & { readonly catchment: Catchment }) {
  const { t, units } = useText();
  const at = ['site', 'catchments', `@${catchment.id}`];
  const set = (key: keyof Catchment, value: unknown) => {
    if (value !== null && value !== catchment[key]) edit([{ kind: 'replace', path: [...at, key], value: value as never }]);
  };
  const change = (surface: Surface) => edit([
    { kind: 'replace', path: at, value: { ...catchment, surface, ...surfaceDefaults(surface) } as never },
  ]);
  return (
    <fieldset className="catchment">
      <legend>{catchment.name}</legend>
      <TextField label={t('designs.field.name')} value={catchment.name} onChange={(event) => set('name', event.target.value)} />
      <Select label={t('designs.surface')} value={catchment.surface} onChange={change} choices={surfaces.map((surface) => ({ value: surface, label: t(`designs.surface.${surface}`) }))} />
      <NumberField label={t('designs.area')} value={catchment.area} onChange={(area) => set('area', area)} unit={units === 'us' ? 'ft²' : 'm²'} perUnit={units === 'us' ? 0.09290304 : 1} decimals={1} />
      <NumberField label={t('designs.coefficient')} value={catchment.coefficient} onChange={(coefficient) => set('coefficient', coefficient)} />
      <Select label={t('designs.goesTo')} value={keyOf(catchment.drainsTo)} onChange={(key) => set('drainsTo', targetOf(key))} choices={targets(document, t('designs.offSite'))} />
      <Button kind="text" onClick={() => edit([{ kind: 'remove', path: at }])}>{t('designs.removeCatchment')}</Button>
    </fieldset>
  );
}

function targets(document: DesignDocument, offSite: string) {
  return [
    ...document.site.lowSpots.map((spot) => ({ value: `lowSpot:${spot.id}`, label: spot.name })),
    ...document.system.parts.filter((part) => ['gutter', 'channel', 'catchBasin', 'swale', 'basin'].includes(part.kind)).map((part) => ({ value: `part:${part.id}`, label: part.name })),
    { value: 'offSite:', label: offSite },
  ];
}

function keyOf(target: DrainsTo): string {
  return target.kind === 'offSite' ? 'offSite:' : `${target.kind}:${target.id}`;
}

function targetOf(key: string): DrainsTo {
  const [kind, id = ''] = key.split(':');
  if (kind === 'lowSpot' || kind === 'part') return { kind, id };
  return { kind: 'offSite' };
}
