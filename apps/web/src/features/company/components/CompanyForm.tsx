import { company as api, identity, type Company, type CompanySettings } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { StateAndZone } from '../../../components/StateAndZone.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { isNamed } from '../../../lib/issues.ts';
import { useText } from '../../../lib/reader.tsx';
import './CompanyForm.css';

type Figures = Omit<CompanySettings, 'limits' | 'checklist'>;
type Draft = { readonly [K in keyof Figures]: number | null };

/** Mounted anew for every version, so what is typed always belongs to the version that was seen. */
export function CompanyForm({ company, etag }: { readonly company: Company; readonly etag: string | null }) {
  const { t } = useText();
  const [names, setNames] = useState({ name: company.name, responsibleName: company.responsibleName, phone: company.phone });
  const [place, setPlace] = useState({ state: company.state, timeZone: company.timeZone });
  const [settings, setSettings] = useState<Draft>(figuresOf(company.settings));
  const { write, busy, problem } = useWrite(api.update, { refreshes: [api.read, identity.me] });
  const set = (key: keyof Draft) => (value: number | null) => setSettings({ ...settings, [key]: value });
  const error = (field: string) => (isNamed(problem, field) ? t('ui.checkField') : undefined);
  const needed = (key: keyof Draft) => (settings[key] === null ? t('ui.needed') : error(`settings.${key}`));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isWhole(settings)) write({ body: { ...names, ...place, settings }, ...(etag === null ? {} : { ifMatch: etag }) });
  };
  const days = t('identity.settings.days');
  return (
    <form className="stack company-form" onSubmit={submit}>
      <TextField label={t('identity.companyName')} value={names.name} maxLength={120} required error={error('name')} onChange={(e) => setNames({ ...names, name: e.target.value })} />
      <TextField label={t('identity.settings.responsibleName')} hint={t('identity.settings.responsibleHint')} value={names.responsibleName} maxLength={120} optional
        error={error('responsibleName')} onChange={(e) => setNames({ ...names, responsibleName: e.target.value })} />
      <TextField label={t('identity.phone')} hint={t('identity.phoneHint')} value={names.phone} type="tel" maxLength={40} optional error={error('phone')} onChange={(e) => setNames({ ...names, phone: e.target.value })} />
      <StateAndZone value={place} onChange={setPlace} />
      <LengthField kind="height" label={t('identity.settings.handDig')} value={settings.handDigTolerance} onChange={set('handDigTolerance')} error={needed('handDigTolerance')} />
      <NumberField label={t('identity.settings.warranty')} unit={t('identity.settings.months')} value={settings.warrantyMonths} onChange={set('warrantyMonths')} error={needed('warrantyMonths')} />
      <NumberField label={t('identity.settings.invitation')} unit={days} value={settings.invitationDays} onChange={set('invitationDays')} error={needed('invitationDays')} />
      <NumberField label={t('identity.settings.customerLink')} unit={days} value={settings.customerLinkDays} onChange={set('customerLinkDays')} error={needed('customerLinkDays')} />
      <ProblemNotice problem={problem} />
      <div><Button type="submit" kind="main" busy={busy}>{busy ? t('ui.sending') : t('identity.settings.store')}</Button></div>
    </form>
  );
}

function figuresOf({ limits: _, checklist: _steps, ...figures }: CompanySettings): Figures {
  return figures;
}

function isWhole(draft: Draft): draft is Figures {
  return Object.values(draft).every((value) => value !== null);
}
