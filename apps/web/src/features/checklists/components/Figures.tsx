import { measureCode, type Requirement } from '@yardfall/contracts';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Instrument } from '../api/useInstrument.ts';
import type { Typing } from '../api/useStepDraft.ts';
import { isCheckShot, lastMeasured, measuresAsked } from '../model/evidence.ts';
import type { Measure } from '../model/judge.ts';
import { nameAt } from '../model/sentences.ts';
import type { ItemView } from '../model/view.ts';
import { CheckFigure } from './CheckFigure.tsx';
import { CheckShot } from './CheckShot.tsx';
import { LevelField } from './LevelField.tsx';
import { Limits, Verdict } from './Verdict.tsx';

interface FiguresProps {
  readonly view: ItemView;
  readonly typing: Typing;
  readonly instrument: Instrument;
}

/** The figures of a step, each judged while it is typed; none is recorded by itself. */
export function Figures({ view, typing: { draft, change }, instrument }: FiguresProps) {
  const set = (name: string, value: number | null) => {
    const rest = Object.entries(draft.values).filter(([other]) => other !== name);
    change({ values: Object.fromEntries(value === null ? rest : [...rest, [name, value]]) });
  };
  return (
    <div className="stack evidence">
      {measuresAsked(view, draft.values).map((measure) => (
        <OneFigure key={measure.name} requirement={view.item.requirement} measure={measure} instrument={instrument} value={draft.values[measure.name] ?? null} recorded={lastMeasured(view, measure.name)} onChange={(value) => set(measure.name, value)} />
      ))}
    </div>
  );
}

interface OneFigureProps {
  readonly requirement: Requirement;
  readonly measure: Measure;
  readonly instrument: Instrument;
  readonly value: number | null;
  readonly recorded: number | null;
  readonly onChange: (value: number | null) => void;
}

function OneFigure({ requirement, measure, instrument, value, recorded, onChange }: OneFigureProps) {
  const { say, t } = useText();
  const detail = measure.name.split(':')[1];
  const label = detail === undefined ? say(measureCode(measure.name)) : t('checklists.measureAt', { measure: measureCode(measure.name), detail: nameAt(requirement, detail, say) });
  const shown = value ?? recorded;
  return (
    <div className="step-figure stack" data-measure={measure.name}>
      <Figure requirement={requirement} measure={measure} label={label} value={value} onChange={onChange} instrument={instrument} />
      {shown === null ? null : <div aria-live="polite" className={value === null ? 'recorded' : undefined}><Verdict measure={measure} value={shown} /></div>}
    </div>
  );
}

const GALLON = 0.003785411784;

function Figure({ requirement, measure, label, value, onChange, instrument }: Omit<OneFigureProps, 'recorded'> & { readonly label: string }) {
  const { units } = useText();
  const us = units === 'us';
  const hint = <Limits measure={measure} />;
  const { quantity, min } = measure;
  if (quantity === 'check') return <CheckFigure requirement={requirement} measure={measure} label={label} value={value} onChange={onChange} />;
  const { isRod, height, points } = instrument;
  if (isCheckShot(measure) && isRod && height !== null && points.length > 0) return <CheckShot key={height} label={label} hint={hint} onChange={onChange} instrument={instrument} height={height} />;
  if (quantity === 'level') return <LevelField label={label} hint={hint} value={value} onChange={onChange} instrument={instrument} />;
  if (quantity === 'length' || quantity === 'height') return <LengthField crew={min !== null && min < 0 ? 'signed' : 'plain'} kind={quantity} label={label} hint={hint} value={value} onChange={onChange} />;
  const unit = {
    slope: us ? { unit: 'in/ft', perUnit: 1 / 12 } : { unit: '%', perUnit: 0.01 },
    volume: us ? { unit: 'gal', perUnit: GALLON } : { unit: 'L', perUnit: 0.001 },
    flow: us ? { unit: 'gpm', perUnit: GALLON / 60 } : { unit: 'L/s', perUnit: 0.001 },
    count: { perUnit: 1 }, number: { perUnit: 1 },
    minutes: { unit: 'min', perUnit: 60 }, seconds: { unit: 's', perUnit: 1 }, share: { unit: '%', perUnit: 0.01 },
  }[quantity];
  return <NumberField label={label} hint={hint} value={value} onChange={onChange} decimals={4} {...unit} />;
}
