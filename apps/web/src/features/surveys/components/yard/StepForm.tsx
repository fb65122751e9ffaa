import { notDone, type DiagnosisAnswers, type DiagnosisStep, type StepAnswer } from '@yardfall/contracts';
import { useId, useState, type FormEvent } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Cautions } from '../../../../components/Cautions.tsx';
import { Photo } from '../../../../components/Photo.tsx';
import { PhotoPick } from '../../../../components/PhotoPick.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { drainFigures, hoseFigures, percolationFigures, type Figures } from '../../model/stepTools.ts';
import { StepTools } from './StepTools.tsx';

interface StepFormProps {
  readonly jobId: string;
  readonly step: DiagnosisStep;
  readonly answers: DiagnosisAnswers;
  readonly photoIds: readonly string[];
  readonly onAnswer: (answer: StepAnswer) => void;
  readonly onPhoto: (note: string, file: File) => void;
}

/** One question: what to do with the hands, what could hurt, the answer by thumb. */
export function StepForm({ jobId, step, answers, photoIds, onAnswer, onPhoto }: StepFormProps) {
  const { t, say } = useText();
  const name = useId();
  const before = answers[step.id];
  const [picks, setPicks] = useState<readonly string[]>(before?.picks ?? []);
  const [figures, setFigures] = useState<Figures>(before?.figures ?? {});
  const hoseFlow = answers['hoseFlow']?.figures['flow'] ?? null;
  const many = step.kind === 'signs';
  const toggle = (pick: string, on: boolean) => {
    if (!many) setPicks([pick]);
    else if (pick === step.none) setPicks(on ? [pick] : []);
    else setPicks(on ? [...picks.filter((one) => one !== step.none), pick] : picks.filter((one) => one !== pick));
  };
  const complete = picks.length > 0 || (step.kind === 'tool' && Object.keys(figures).length > 0 && step.picks.every((pick) => pick === notDone));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (complete) onAnswer({ picks: [...picks], figures: finished(step, figures, hoseFlow) });
  };
  return (
    <form className="why-question" onSubmit={submit} aria-labelledby={`${name}-q`}>
      <h2 id={`${name}-q`} tabIndex={-1}>{say(`surveys.step.${step.id}`)}</h2>
      <p>{say(`surveys.step.${step.id}.how`)}</p>
      {step.cautions.length === 0 ? null : <Cautions which={step.cautions} />}
      {step.tool === undefined ? null : <div className="crew-form"><StepTools tool={step.tool} name={`${jobId}.${step.id}`} figures={figures} onFigures={setFigures} hoseFlow={hoseFlow} /></div>}
      {step.picks.length === 0 ? null : (
        <div className="why-picks" role={many ? 'group' : 'radiogroup'} aria-labelledby={`${name}-q`}>
          {step.picks.map((pick) => (
            <label key={pick} className="why-pick">
              <input type={many ? 'checkbox' : 'radio'} name={name} checked={picks.includes(pick)} onChange={(event) => toggle(pick, event.target.checked)} />
              <span>{say(pickCode(step.id, pick))}</span>
            </label>
          ))}
        </div>
      )}
      <Button type="submit" kind="main" size="crew" wide disabled={!complete}>{t('surveys.why.answer')}</Button>
      <PhotoPick label={t('surveys.yard.photo', { point: say(`surveys.step.${step.id}`) })} onPick={(file) => onPhoto(say(`surveys.step.${step.id}`), file)} />
      {photoIds.length === 0 ? null : <div className="photo-strip">{photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={t('surveys.yard.photo', { point: say(`surveys.step.${step.id}`) })} />)}</div>}
    </form>
  );
}

/** What the tool works out goes with what was measured. */
function finished({ tool }: DiagnosisStep, figures: Figures, hoseFlow: number | null): Figures {
  if (tool === 'hose') return hoseFigures(figures);
  if (tool === 'drain') return drainFigures(figures, hoseFlow);
  return tool === 'percolation' ? percolationFigures(figures) : figures;
}

export function pickCode(step: string, pick: string): string {
  return pick === notDone ? 'surveys.pick.notDone' : pick === 'none' && (step === 'structure' || step === 'surfaceSigns' || step === 'siteLimits') ? 'surveys.pick.none' : `surveys.pick.${step}.${pick}`;
}
