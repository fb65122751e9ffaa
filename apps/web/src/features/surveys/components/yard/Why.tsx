import { diagnose, pitOverWater, stepOf, systemChoice, type Diagnosis, type NamedReferral } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { useText } from '../../../../lib/reader.tsx';
import type { YardBook } from '../../api/useYardBook.ts';
import { standingOf } from '../../model/fieldBook.ts';
import { pickCode, StepForm } from './StepForm.tsx';

/** Why is it wet: one question after the other, the causes with the test that proved each, and who must be called. */
export function Why({ jobId, yard }: { readonly jobId: string; readonly yard: YardBook }) {
  const { t } = useText();
  const [chosen, setChosen] = useState<string | null>(null);
  const diagnosis = diagnose(yard.answers);
  const at = chosen ?? diagnosis.next;
  return (
    <div className="stack">
      {diagnosis.referrals.map((referral) => <Referred key={referral.id} referral={referral} />)}
      {at === null
        ? <Notice><p>{t(diagnosis.stopped ? 'surveys.why.stop' : 'surveys.why.complete')}</p></Notice>
        : <StepForm key={at} jobId={jobId} step={stepOf(at)} answers={yard.answers} photoIds={yard.photosOf(at)} onPhoto={(note, file) => yard.addStepPhoto(at, note, file)}
            onAnswer={(answer) => { yard.answer(at, answer); setChosen(null); }} />}
      <p className="faint">{t('surveys.why.progress', { done: diagnosis.answered.length, all: diagnosis.answered.length + diagnosis.open.length })}</p>
      <Causes diagnosis={diagnosis} />
      <Kit yard={yard} diagnosis={diagnosis} />
      <Answered yard={yard} diagnosis={diagnosis} onAgain={setChosen} />
    </div>
  );
}

const severity = { stop: 'stop', decline: 'stop', along: 'caution' } as const;

function Referred({ referral: { id, weight, call } }: { readonly referral: NamedReferral }) {
  const { t } = useText();
  return (
    <Notice severity={severity[weight]} title={`${t(`surveys.why.${weight}`)}: ${t(`surveys.refer.${id}`)}`}>
      <p>{t('surveys.why.call', { who: call.map((who) => t(`surveys.callee.${who}`)).join(', ') })}</p>
    </Notice>
  );
}

function Causes({ diagnosis }: { readonly diagnosis: Diagnosis }) {
  const { t, say } = useText();
  const names = (steps: readonly string[]) => steps.map((step) => say(`surveys.step.${step}`)).join('; ');
  return (
    <section className="stack" aria-label={t('surveys.why.causes')}>
      <h2>{t('surveys.why.causes')}</h2>
      {diagnosis.causes.length === 0 ? <p className="faint">{t('surveys.why.noName')}</p> : null}
      <ul className="why-list">
        {diagnosis.causes.map((cause) => (
          <li key={cause.id} className={cause.state}>
            <strong>{t(`surveys.cause.${cause.id}`)}</strong>
            <span className="faint">{cause.state === 'proven' ? t('surveys.why.proven', { tests: names(cause.provenBy) }) : t('surveys.why.suspected')}</span>
            {cause.testsLeft.length === 0 ? null : <span>{t('surveys.why.left', { tests: names(cause.testsLeft) })}</span>}
            <span>{t('surveys.why.toHome', { words: `surveys.cause.${cause.id}.home` })}</span>
            {hasRemedy(cause.id) ? <span>{say(`surveys.cause.${cause.id}.then`)}</span> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** A leak is somebody else's to mend. */
function hasRemedy(cause: string): boolean {
  return !cause.startsWith('leak');
}

function Kit({ yard, diagnosis }: { readonly yard: YardBook; readonly diagnosis: Diagnosis }) {
  const { t } = useText();
  if (diagnosis.stopped || diagnosis.causes.length === 0) return null;
  const { answers, book } = yard;
  const percolation = answers['percolation']?.figures ?? {};
  const hole = answers['waterHole'];
  const list = systemChoice({
    causes: diagnosis.causes.map(({ id }) => id),
    gravity: book === null ? null : standingOf(book).gravity[0]?.verdict ?? null,
    infiltration: percolation['design'] ?? null,
    aboveWaterTable: pitOverWater(hole),
    roofDrainsHere: (answers['gutters']?.figures['leadersOnSlab'] ?? 0) > 0,
    // Until somebody has said no, the list goes on as if it may.
    legalOutlet: !(answers['outletRight']?.picks.includes('notAllowed') ?? false), power: !(answers['power']?.picks.includes('none') ?? false),
  });
  return (
    <section className="stack" aria-label={t('surveys.why.kit')}>
      <h2>{t('surveys.why.kit')}</h2>
      {hole !== undefined && pitOverWater(hole) === null && (hole.picks.includes('water') || hole.picks.includes('dry')) ? <p className="faint">{t('surveys.why.pitAsk')}</p> : null}
      <ol className="why-kit">{list.map((kind) => <li key={kind}>{t(`surveys.kit.${kind}`)}</li>)}</ol>
    </section>
  );
}

function Answered({ yard, diagnosis, onAgain }: { readonly yard: YardBook; readonly diagnosis: Diagnosis; readonly onAgain: (step: string) => void }) {
  const { t, say } = useText();
  if (diagnosis.answered.length === 0) return null;
  return (
    <section className="stack" aria-label={t('surveys.why.answered')}>
      <h2>{t('surveys.why.answered')}</h2>
      <ul className="why-answers">
        {diagnosis.answered.map((step) => (
          <li key={step}>
            <span>{say(`surveys.step.${step}`)}<br /><strong>{(yard.answers[step]?.picks ?? []).map((pick) => say(pickCode(step, pick))).join('; ') || t('surveys.why.figures')}</strong>{' '}
              <span className="faint">{t(yard.isInOffice(`diagnosis:${step}`) ? 'surveys.yard.inOffice' : 'surveys.yard.onPhone')}</span></span>
            <Button kind="text" size="crew" aria-label={`${t('surveys.why.change')}: ${say(`surveys.step.${step}`)}`} onClick={() => onAgain(step)}>{t('surveys.why.change')}</Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
