import { holidayNames } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { states } from '../../../lib/places.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useSignRule } from '../api/rules.ts';
import { lifeKinds, noAnswers, noticeKinds, renewalKinds, type RuleChoices, ruleOf } from '../model/ruleForm.ts';

/** What the owner read at the center of a state, and the name under it. The clocks of that state are counted by it from then on. */
export function RuleForm({ onDone }: { readonly onDone: () => void }) {
  const { t } = useText();
  const { me } = useMe();
  const [choices, setChoices] = useState<RuleChoices>({ notice: 'fullWorkingDays', life: 'workingDaysRequest', renewal: 'workingDaysBeforeExpiry' });
  const [today] = useState(() => new Date().toISOString().slice(0, 10));
  const [tolerance, setTolerance] = useState<number | null>(null);
  const { write, busy, problem } = useSignRule(onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (tolerance === null) return;
    const rule = ruleOf(choices, field, tolerance);
    write({ body: { rule, signedName: field('signedName') } });
  };
  return (
    <form className="stack ticket-form" onSubmit={submit} aria-label={t('locates.rules.add')}>
      <Notice severity="caution"><p>{t('locates.rules.care')}</p></Notice>
      <Select label={t('ui.state')} name="state" choices={states.map((state) => ({ value: state, label: state }))} />
      <Clocks choices={choices} onChange={setChoices} />
      <Hours />
      <LengthField kind="size" label={t('locates.rules.tolerance')} hint={t('locates.rules.toleranceHint')} value={tolerance} onChange={setTolerance} required />
      <Select label={t('locates.rules.measuredFrom')} name="toleranceFrom" choices={[{ value: 'edge', label: t('locates.rules.fromEdge') }, { value: 'mark', label: t('locates.rules.fromMark') }]} />
      <Select label={t('locates.rules.noAnswer')} name="noAnswer" choices={noAnswers.map((value) => ({ value, label: t(`locates.noAnswer.${value}`) }))} />
      <fieldset>
        <legend className="field-legend">{t('locates.rules.holidays')}</legend>
        <div className="ticket-utilities">{holidayNames.map((name) => <CheckField key={name} name={`holiday.${name}`} label={t(`locates.holiday.${name}`)} />)}</div>
      </fieldset>
      <TextArea label={t('locates.rules.source')} hint={t('locates.rules.sourceHint')} name="source" required minLength={10} maxLength={500} rows={2} />
      <TextField label={t('locates.rules.readOn')} name="readOn" type="date" required max={today} />
      <TextField label={t('locates.rules.sign')} hint={t('locates.rules.signHint', { name: me?.name ?? '' })} name="signedName" required autoComplete="off" maxLength={120} />
      <Refused problem={problem} />
      <div className="row">
        <Button type="submit" kind="main" busy={busy} disabled={busy || tolerance === null}>{t('locates.rules.signDo')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}

function Clocks({ choices, onChange }: { readonly choices: RuleChoices; readonly onChange: (choices: RuleChoices) => void }) {
  const { t } = useText();
  const count = { inputMode: 'numeric', pattern: '[0-9]{1,3}', required: true, autoComplete: 'off' } as const;
  return (
    <>
      <Select label={t('locates.rules.notice')} choices={noticeKinds.map((value) => ({ value, label: t(`locates.rules.kind.${value}`) }))} value={choices.notice} onChange={(notice) => onChange({ ...choices, notice })} />
      <TextField label={t(choices.notice === 'fullWorkingDays' ? 'locates.rules.days' : 'locates.rules.hours')} name="notice" {...count} />
      {choices.notice === 'hoursFromNextWorkingDay' ? <TextField label={t('locates.rules.fromHour')} name="fromHour" {...count} defaultValue="7" /> : null}
      <Select label={t('locates.rules.life')} choices={lifeKinds.map((value) => ({ value, label: t(`locates.rules.kind.${value}`) }))} value={choices.life} onChange={(life) => onChange({ ...choices, life })} />
      <TextField label={t('locates.rules.days')} name="life" {...count} />
      <Select label={t('locates.rules.renewal')} choices={renewalKinds.map((value) => ({ value, label: t(`locates.rules.kind.${value}`) }))} value={choices.renewal} onChange={(renewal) => onChange({ ...choices, renewal })} />
      {choices.renewal === 'notice' ? null : <TextField label={t('locates.rules.days')} name="renewal" {...count} />}
    </>
  );
}

function Hours() {
  const { t } = useText();
  const hour = { inputMode: 'numeric', pattern: '[0-9]{1,2}', autoComplete: 'off' } as const;
  return (
    <div className="row">
      <TextField label={t('locates.rules.hoursFrom')} hint={t('locates.rules.hoursHint')} name="receivedFrom" {...hour} />
      <TextField label={t('locates.rules.hoursUntil')} name="receivedUntil" {...hour} />
    </div>
  );
}

/** Why a rule was refused, by the field. */
function Refused({ problem }: { readonly problem: unknown }) {
  const { t } = useText();
  const paths = problem instanceof ApiProblem ? problem.issues.map(({ path }) => path) : [];
  if (paths.includes('body.signedName')) return <Notice severity="stop"><p>{t('locates.rules.refused.name')}</p></Notice>;
  if (paths.includes('body.rule')) return <Notice severity="stop"><p>{t('locates.rules.refused.rule')}</p></Notice>;
  return <ProblemNotice problem={problem} />;
}
