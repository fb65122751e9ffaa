import { fixedFigures, hasLimits, isWeaker, itemTemplates, leastReason, mayCure, mayLeaveOut, mayReword, type OwnFigure, type WantedChange } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { FigureLimits } from './FigureLimits.tsx';
import { CementFields } from './CementFields.tsx';
import { cureOf, noCement } from '../model/cement.ts';
import { builtInName } from '../model/stepWords.ts';

interface ChangeStepProps {
  readonly busy: boolean;
  readonly onSet: (change: WantedChange) => void;
}

/** One built-in step as the company does it. */
export function ChangeStep({ busy, onSet }: ChangeStepProps) {
  const text = useText();
  const [id, setId] = useState('');
  const choices = itemTemplates.map((template) => ({ value: template.id, label: builtInName(template.id, text) }));
  return (
    <div className="stack company-form">
      <Select label={text.t('steps.choose')} value={id} onChange={setId} choices={choices} />
      {id === '' ? null : <Fields key={id} id={id} busy={busy} onSet={onSet} />}
    </div>
  );
}

function Fields({ id, busy, onSet }: ChangeStepProps & { readonly id: string }) {
  const { t } = useText();
  const usual = itemTemplates.find((template) => template.id === id)?.minPhotos ?? 0;
  const [now, setNow] = useState({ leftOut: false, what: '', adds: '', photos: usual as number | null, limits: 1 as number | null, cure: noCement, figures: [] as readonly OwnFigure[], why: '' });
  const change: WantedChange = { ...now, item: id, photos: now.photos === usual ? null : now.photos, limits: now.limits === 1 ? null : now.limits, cure: cureOf(now.cure), figures: now.figures.length === 0 ? null : [...now.figures] };
  const isWide = now.limits === null || now.limits < 0.1 || now.limits > 3;
  const needsWhy = isWeaker(change) && now.why.trim().length < leastReason;
  const says = now.leftOut || now.what !== '' || now.adds !== '' || change.photos !== null || change.limits !== null || change.cure !== null || change.figures !== null;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (!needsWhy && says && now.photos !== null && !isWide) onSet(change);
  };
  return (
    <form className="stack" onSubmit={submit}>
      {mayLeaveOut(id) ? <CheckField label={t('steps.field.leftOut')} checked={now.leftOut} onChange={(event) => setNow({ ...now, leftOut: event.target.checked })} /> : <p className="faint">{t('steps.holds')}</p>}
      {now.leftOut ? null : (
        <>
          {mayReword(id) ? <TextField label={t('steps.field.what')} optional maxLength={200} value={now.what} onChange={(event) => setNow({ ...now, what: event.target.value })} /> : null}
          <TextArea label={t('steps.field.adds')} hint={t('steps.field.ownHint')} optional rows={2} maxLength={400} value={now.adds} onChange={(event) => setNow({ ...now, adds: event.target.value })} />
          <NumberField label={t('steps.field.photos')} value={now.photos} onChange={(photos) => setNow({ ...now, photos })} error={now.photos === null ? t('ui.needed') : undefined} />
          {fixedFigures(id).length > 0 ? <FigureLimits id={id} value={now.figures} onChange={(figures) => setNow({ ...now, figures })} /> : null}
          {mayCure(id) ? <CementFields value={now.cure} onChange={(cure) => setNow({ ...now, cure })} /> : null}
          {hasLimits(id) ? <NumberField label={t('steps.field.limits')} hint={t('steps.field.limitsHint')} unit="%" perUnit={0.01} value={now.limits} onChange={(limits) => setNow({ ...now, limits })} error={isWide ? t('steps.field.limitsRange') : undefined} /> : null}
        </>
      )}
      <TextField label={t('steps.why')} hint={t('steps.field.whyHint')} optional={!isWeaker(change)} maxLength={500} value={now.why} error={needsWhy ? t('errors.checklist.rule.weakerWithoutReason') : undefined} onChange={(event) => setNow({ ...now, why: event.target.value })} />
      <div><Button type="submit" kind="main" busy={busy} disabled={!says}>{busy ? t('ui.sending') : t('steps.set')}</Button></div>
    </form>
  );
}
