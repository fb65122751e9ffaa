import { Choices } from '../../../components/Choices.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Measure } from '../model/judge.ts';

interface CheckFigureProps {
  readonly measure: Measure;
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (value: number) => void;
}

/** Whether something is there and as it should be. What is asked for because of another figure is only waited for, and does not fail. */
export function CheckFigure({ measure, label, value, onChange }: CheckFigureProps) {
  const { t } = useText();
  const there = { value: '1', label: t(measure.when === undefined ? 'checklists.check.yes' : 'checklists.check.aboard') } as const;
  const choices = measure.when === undefined ? [there, { value: '0', label: t('checklists.check.no') } as const] : [there];
  return <Choices look="crew" label={label} choices={choices} value={value === null ? null : value === 1 ? '1' : '0'} onChange={(chosen) => onChange(Number(chosen))} />;
}
