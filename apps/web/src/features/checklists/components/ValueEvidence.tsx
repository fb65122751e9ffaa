import { measureCode } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import { fallOfShots, lastMeasured } from '../model/evidence.ts';
import type { Measure } from '../model/judge.ts';
import { nameAt } from '../model/sentences.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { Limits, Verdict } from './Verdict.tsx';

/** One measured figure, judged while it is typed. */
export function ValueEvidence({ view, record, measure }: EvidenceProps & { readonly measure: Measure }) {
  const { say, t } = useText();
  const recorded = lastMeasured(view, measure.name);
  const [value, setValue] = useState<number | null>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (value !== null) record.record({ kind: 'measured', name: measure.name, value }, () => setValue(null));
  };
  const detail = measure.name.split(':')[1];
  const label = detail === undefined ? say(measureCode(measure.name)) : t('checklists.measureAt', { measure: measureCode(measure.name), detail: nameAt(view.item.requirement, detail, say) });
  return (
    <form className="stack evidence" onSubmit={submit} data-measure={measure.name}>
      <FromShots view={view} record={record} measure={measure} />
      <Figure measure={measure} label={label} value={value} onChange={setValue} />
      {value === null ? null : <div aria-live="polite"><Verdict measure={measure} value={value} /></div>}
      {value === null && recorded !== null ? <div className="recorded"><p>{t('checklists.recorded')}</p><Verdict measure={measure} value={recorded} /></div> : null}
      <Button type="submit" size="crew" wide disabled={value === null || record.busy}>{t(recorded === null ? 'checklists.recordValue' : 'checklists.recordAgain')}</Button>
    </form>
  );
}

/** The fall needs no typing once both ends are shot. */
function FromShots({ view, record, measure }: Pick<EvidenceProps, 'view' | 'record'> & { readonly measure: Measure }) {
  const { t } = useText();
  const fall = measure.name === 'slope' ? fallOfShots(view) : null;
  if (fall === null || fall === lastMeasured(view, 'slope')) return null;
  return (
    <>
      <Verdict measure={measure} value={fall} />
      <Button size="crew" wide disabled={record.busy} onClick={() => record.record({ kind: 'measured', name: 'slope', value: fall })}>{t('checklists.fromShots')}</Button>
    </>
  );
}

interface FigureProps {
  readonly measure: Measure;
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
}

const GALLON = 0.003785411784;

function Figure({ measure, label, value, onChange }: FigureProps) {
  const { units } = useText();
  const us = units === 'us';
  const hint = <Limits measure={measure} />;
  const { quantity } = measure;
  if (quantity === 'level' || quantity === 'length' || quantity === 'height') return <LengthField kind={quantity} label={label} hint={hint} value={value} onChange={onChange} />;
  const unit = {
    slope: us ? { unit: 'in/ft', perUnit: 1 / 12 } : { unit: '%', perUnit: 0.01 },
    volume: us ? { unit: 'gal', perUnit: GALLON } : { unit: 'L', perUnit: 0.001 },
    flow: us ? { unit: 'gpm', perUnit: GALLON / 60 } : { unit: 'L/s', perUnit: 0.001 },
    count: { perUnit: 1 },
  }[quantity];
  return <NumberField label={label} hint={hint} value={value} onChange={onChange} decimals={4} {...unit} />;
}
