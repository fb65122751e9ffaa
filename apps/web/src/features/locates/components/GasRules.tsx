import type { GasRule } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { useEnterGasRule, useGasRules } from '../api/rules.ts';

type Open = { readonly of: GasRule | null; readonly what: 'enter' | 'takeBack' } | null;

/** What the gas companies told this contractor to do when their line is hit; the crew reads it on the screen of a hit line. */
export function GasRules() {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useGasRules();
  const [open, setOpen] = useState<Open>(null);
  if (isPending) return <Loading what={t('locates.gas.loading')} />;
  const items = data?.data.items ?? [];
  const inForce = items.filter((rule) => rule.inForce);
  const owner = may('company.manage');
  return (
    <section className="stack" aria-labelledby="gas-rules">
      <Heading id="gas-rules">{t('locates.gas')}</Heading>
      <p className="measure">{t('locates.gas.lead')}</p>
      <ProblemNotice problem={error} />
      {data !== undefined && inForce.length === 0 ? <Notice severity="caution"><p>{t('locates.gas.none')}</p></Notice> : null}
      {inForce.map((rule) => <InForce key={rule.id} rule={rule} onChange={owner && open === null ? (what) => setOpen({ of: rule, what }) : null} />)}
      <Earlier rules={items.filter((rule) => !rule.inForce)} />
      {!owner ? <p className="faint">{t('locates.gas.ownerOnly')}</p>
        : open === null ? <div><Button onClick={() => setOpen({ of: null, what: 'enter' })}>{t('locates.gas.add')}</Button></div>
          : <Form key={open.what + (open.of?.id ?? '')} {...open} onDone={() => setOpen(null)} />}
    </section>
  );
}

function InForce({ rule, onChange }: { readonly rule: GasRule; readonly onChange: ((what: 'enter' | 'takeBack') => void) | null }) {
  const { t } = useText();
  const { gasCompany } = rule;
  return (
    <article className="stack">
      <Heading level={3}>{gasCompany}</Heading>
      <p className="measure">{rule.rule}</p>
      <p className="faint">{t('ui.gasRule.source', { source: rule.source, readOn: rule.readOn, by: rule.by, at: rule.at })}</p>
      {onChange === null ? null : (
        <div className="row">
          <Button aria-label={t('locates.gas.changeOf', { gasCompany })} onClick={() => onChange('enter')}>{t('locates.gas.change')}</Button>
          <Button kind="text" aria-label={t('locates.gas.takeBackOf', { gasCompany })} onClick={() => onChange('takeBack')}>{t('locates.gas.takeBack')}</Button>
        </div>
      )}
    </article>
  );
}

function Earlier({ rules }: { readonly rules: readonly GasRule[] }) {
  const { t } = useText();
  if (rules.length === 0) return null;
  return (
    <details className="fold">
      <summary>{t('locates.gas.earlier')}</summary>
      <ul className="ticket-history">
        {rules.map((rule) => (
          <li key={rule.id}>
            {`${rule.gasCompany}: ${rule.rule === '' ? t('locates.gas.wasTakenBack') : rule.rule}`}
            <span className="faint ticket-note">{t('ui.gasRule.source', { source: rule.source, readOn: rule.readOn, by: rule.by, at: rule.at })}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** @param of the rule that is put right or taken back; null for a new one */
function Form({ of, what, onDone }: { readonly of: GasRule | null; readonly what: 'enter' | 'takeBack'; readonly onDone: () => void }) {
  const { t } = useText();
  const [today] = useState(() => new Date().toISOString().slice(0, 10));
  const { write, busy, problem } = useEnterGasRule(onDone);
  const takesBack = what === 'takeBack';
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    write({ body: { gasCompany: of?.gasCompany ?? field('gasCompany'), rule: takesBack ? '' : field('rule'), source: field('source'), readOn: field('readOn') } });
  };
  const title = of === null ? t('locates.gas.add') : t(takesBack ? 'locates.gas.takeBackOf' : 'locates.gas.changeOf', { gasCompany: of.gasCompany });
  return (
    <form className="stack ticket-form" onSubmit={submit} aria-label={title}>
      <Heading level={3}>{title}</Heading>
      <Notice severity="caution"><p>{t(takesBack ? 'locates.gas.takeBackCare' : 'locates.gas.care')}</p></Notice>
      {of === null ? <TextField label={t('locates.gas.company')} name="gasCompany" required minLength={2} maxLength={120} autoComplete="off" /> : null}
      {takesBack ? null : <TextArea label={t('locates.gas.rule')} hint={t('locates.gas.ruleHint')} name="rule" required maxLength={1000} rows={3} defaultValue={of?.rule} />}
      <TextArea label={t(takesBack ? 'locates.gas.why' : 'locates.gas.source')} hint={takesBack ? undefined : t('locates.gas.sourceHint')} name="source" required minLength={5} maxLength={500} rows={2} />
      <TextField label={t('locates.gas.readOn')} name="readOn" type="date" required max={today} />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" kind={takesBack ? 'danger' : 'main'} busy={busy}>{t(takesBack ? 'locates.gas.takeBackDo' : 'locates.gas.enterDo')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
