import type { Requirement } from '@yardfall/contracts';
import { isMessageCode } from '@yardfall/text';
import { Choices } from '../../../components/Choices.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Measure } from '../model/judge.ts';

interface CheckFigureProps {
  readonly requirement: Requirement;
  readonly measure: Measure;
  readonly label: string;
  readonly value: number | null;
  readonly onChange: (value: number) => void;
}

/** Whether something is there and as it should be. What is asked for because of another figure is only waited for, and does not fail. */
export function CheckFigure({ requirement, measure, label, value, onChange }: CheckFigureProps) {
  const { t } = useText();
  const design = useDesigned(requirement, measure);
  const there = { value: '1', label: t(measure.when === undefined ? 'checklists.check.yes' : 'checklists.check.aboard') } as const;
  const choices = measure.when === undefined ? [there, { value: '0', label: t('checklists.check.no') } as const] : [there];
  return <div className="check-figure"><Choices look="crew" label={design === null ? label : t('checklists.check.design', { what: label, design })} choices={choices} value={value === null ? null : value === 1 ? '1' : '0'} onChange={(chosen) => onChange(Number(chosen))} /></div>;
}

/** What the design says of the line; null where it says nothing. */
function useDesigned({ params }: Requirement, { name }: Measure): string | null {
  const { q, say } = useText();
  const is = params[`is:${name}`];
  if (typeof is === 'number') return q(name === 'blades' ? 'tape' : 'diameter', is);
  return is === undefined ? null : isMessageCode(is) ? say(is) : is;
}
