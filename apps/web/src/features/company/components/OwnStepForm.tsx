import { groupText, itemGroups, itemTemplates, type ItemGroup, type OwnStep, ownTraits } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { freeId } from '../model/stepWords.ts';

interface OwnStepFormProps {
  readonly busy: boolean;
  readonly taken: readonly string[];
  readonly onAdd: (step: OwnStep) => void;
}

const empty: Omit<OwnStep, 'id'> & { group: ItemGroup } = { group: 'C', applies: 'always', what: '', acceptance: '', photo: '', photos: 0, whyCrew: '', whyHome: '' };

/** A step that the company does besides the built-in ones. */
export function OwnStepForm({ busy, taken, onAdd }: OwnStepFormProps) {
  const { t, say } = useText();
  const [now, setNow] = useState(empty);
  const all = itemTemplates.map(({ id }) => id);
  const write = (field: 'what' | 'acceptance' | 'photo' | 'whyCrew' | 'whyHome') => ({ value: now[field], onChange: (event: { readonly target: { readonly value: string } }) => setNow({ ...now, [field]: event.target.value }) });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const { group, ...step } = now;
    onAdd({ ...step, id: freeId(group, taken) });
  };
  return (
    <details className="company-form">
      <summary>{t('steps.add')}</summary>
      <form className="stack" onSubmit={submit}>
        <Select label={t('steps.field.group')} value={now.group} onChange={(group) => setNow({ ...now, group })} choices={itemGroups.map((group) => ({ value: group, label: say(groupText(group, all)) }))} />
        <Select label={t('steps.field.applies')} value={now.applies} onChange={(applies) => setNow({ ...now, applies })} choices={ownTraits.map((trait) => ({ value: trait, label: t(`steps.trait.${trait}`) }))} />
        <TextField label={t('steps.field.ownWhat')} hint={t('steps.field.ownHint')} required minLength={3} maxLength={200} {...write('what')} />
        <TextArea label={t('steps.field.acceptance')} required minLength={3} maxLength={400} rows={2} {...write('acceptance')} />
        <NumberField label={t('steps.field.photos')} value={now.photos} onChange={(photos) => setNow({ ...now, photos: photos ?? 0 })} />
        <TextField label={t('steps.field.photo')} optional maxLength={300} {...write('photo')} />
        <TextArea label={t('steps.field.whyCrew')} optional maxLength={400} rows={2} {...write('whyCrew')} />
        <TextArea label={t('steps.field.whyHome')} optional maxLength={400} rows={2} {...write('whyHome')} />
        <div><Button type="submit" kind="main" busy={busy}>{busy ? t('ui.sending') : t('steps.addIt')}</Button></div>
      </form>
    </details>
  );
}
