import type { Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { useHandOver } from '../api/handover.ts';
import type { LevelAsked } from '../model/levels.ts';
import './handover.css';

interface HandoverFormProps {
  readonly job: Job;
  readonly levels: readonly LevelAsked[];
  /** What the company usually gives. */
  readonly warrantyYears: number;
}

const keyOf = ({ part, field }: LevelAsked) => `${part} ${field}`;

/** As-built levels begin with what the crew measured; nothing is taken over from the design. */
export function HandoverForm({ job, levels, warrantyYears }: HandoverFormProps) {
  const { t, q } = useText();
  const [typed, setTyped] = useState<Readonly<Record<string, number | null>>>({});
  const [years, setYears] = useState<number | null>(warrantyYears);
  const { write, busy, problem } = useHandOver();
  const valueOf = (level: LevelAsked) => typed[keyOf(level)] ?? (keyOf(level) in typed ? null : level.measured);
  const whole = years !== null && Number.isInteger(years) && years >= 1 && years <= 10;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (!whole) return;
    const field = fieldsOf(event.currentTarget);
    const asBuilt = levels.flatMap((level) => {
      const value = valueOf(level);
      return value === null ? [] : [{ part: level.part, field: level.field, level: value }];
    });
    write({ params: { jobId: job.id }, body: { asBuilt, pumpSerial: field('pumpSerial'), breaker: field('breaker'), deviations: field('deviations'), customerName: field('customerName'), warrantyYears: years } });
  };
  return (
    <form className="stack" onSubmit={submit} aria-label={t('handover.title')}>
      <Heading level={3}>{t('handover.asBuilt')}</Heading>
      <p className="faint measure">{t('handover.asBuiltHint')}</p>
      <div className="as-built">
        {levels.map((level) => (
          <LengthField key={keyOf(level)} kind="level" optional label={t('handover.levelOf', { part: level.name, field: `handover.field.${level.field}` })}
            hint={t('handover.designedIs', { level: q('level', level.designed) })} value={valueOf(level)} onChange={(value) => setTyped({ ...typed, [keyOf(level)]: value })} />
        ))}
      </div>
      <div className="as-built">
        <TextField label={t('handover.serial')} name="pumpSerial" maxLength={80} optional autoComplete="off" />
        <TextField label={t('handover.breaker')} name="breaker" maxLength={80} optional autoComplete="off" />
        <TextField label={t('handover.customer')} hint={t('handover.customerHint')} name="customerName" maxLength={120} required defaultValue={job.customer.name} />
        <NumberField label={t('handover.years')} value={years} onChange={setYears} decimals={0} error={whole ? undefined : t('handover.yearsRange')} />
      </div>
      <TextArea label={t('handover.deviations')} name="deviations" maxLength={2000} rows={3} optional />
      <ProblemNotice problem={problem} />
      <div><Button type="submit" kind="main" busy={busy} disabled={!whole || busy}>{t('handover.complete')}</Button></div>
    </form>
  );
}
