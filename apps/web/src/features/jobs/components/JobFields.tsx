import { TextField } from '../../../components/Field.tsx';
import { isNamed } from '../../../lib/issues.ts';
import { useText } from '../../../lib/reader.tsx';
import type { JobInput } from '../model/jobDraft.ts';
import { ComplaintFields } from './ComplaintFields.tsx';
import { CustomerFields } from './CustomerFields.tsx';
import { PropertyFields } from './PropertyFields.tsx';
import './JobFields.css';

interface JobFieldsProps {
  readonly value: JobInput;
  readonly onChange: (value: JobInput) => void;
  readonly problem: unknown;
}

export function JobFields({ value, onChange, problem }: JobFieldsProps) {
  const { t } = useText();
  const error = (field: string) => (isNamed(problem, field) ? t('ui.checkField') : undefined);
  return (
    <div className="job-fields">
      <ComplaintFields value={value.complaint} onChange={(complaint) => onChange({ ...value, complaint })} error={error} />
      <div className="stack-wide">
        <TextField label={t('jobs.title')} hint={t('jobs.title.hint')} value={value.title} maxLength={120} required error={error('title')}
          onChange={(e) => onChange({ ...value, title: e.target.value })} />
        <CustomerFields value={value.customer} onChange={(customer) => onChange({ ...value, customer })} error={error} />
        <PropertyFields value={value.property} onChange={(property) => onChange({ ...value, property })} error={error} />
      </div>
    </div>
  );
}
