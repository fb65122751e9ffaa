import { useBuildParts } from '../hooks/useBuildParts.ts';
import { useText } from '../lib/reader.tsx';
import { Select } from './Select.tsx';

interface PartSelectProps {
  readonly jobId: string;
  readonly value: string | null;
  readonly onChange: (part: string | null) => void;
}

/** Which part of the system something is about; nothing where no part is being built yet. */
export function PartSelect({ jobId, value, onChange }: PartSelectProps) {
  const { t } = useText();
  const parts = useBuildParts(jobId);
  if (parts.length === 0) return null;
  const choices = [{ value: 'none', label: t('ui.phone.noPart') }, ...parts.map(({ id, name }) => ({ value: `part:${id}`, label: name }))];
  return <Select label={t('ui.phone.part')} choices={choices} value={value === null ? 'none' : `part:${value}`} onChange={(picked) => onChange(picked === 'none' ? null : picked.slice('part:'.length))} />;
}
