import type { DesignDocument } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { Button } from '../../../../components/Button.tsx';
import { Heading } from '../../../../components/Heading.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { useText } from '../../../../lib/reader.tsx';
import type { GroundAnswer, GroundLow } from '../../model/plan/ground.worker.ts';

interface GroundPanelProps {
  readonly document: DesignDocument;
  readonly answer: GroundAnswer | null;
  readonly level: number | null;
  readonly onLevel: (level: number | null) => void;
  readonly edit: (operations: readonly DraftOperation[]) => void;
}

const mostShown = 3;

/** What the spot levels say about the ground: its low spots, how much water they hold, and how far it reaches at a level. */
export function GroundPanel({ document, answer, level, onLevel, edit }: GroundPanelProps) {
  const { t, say } = useText();
  const placed = document.site.spotLevels.filter(({ position }) => position !== null).length;
  return (
    <section className="stack">
      <Heading level={3}>{t('plan.ground')}</Heading>
      {placed < 3 ? <p className="faint">{say('surface.tooFewPoints', { count: placed, least: 3 })}</p> : null}
      {answer?.ok === false ? <p>{say(answer.code, answer.params)}</p> : null}
      {answer?.ok === true && answer.lows.length === 0 ? <p>{t('plan.groundNone')}</p> : null}
      {answer?.ok === true && answer.lows.length > 0 ? (
        <>
          <div className="plan-panel"><LengthField label={t('plan.waterAt')} kind="level" value={level} onChange={onLevel} optional /></div>
          {answer.lows.slice(0, mostShown).map((low) => <Low key={`${String(low.bottom)} ${String(low.volume)}`} document={document} low={low} edit={edit} />)}
        </>
      ) : null}
    </section>
  );
}

function Low({ document, low, edit }: { readonly document: DesignDocument; readonly low: GroundLow; readonly edit: GroundPanelProps['edit'] }) {
  const { t } = useText();
  const stages = low.stageArea.filter(({ area }) => area > 0);
  const isTaken = (spot: DesignDocument['site']['lowSpots'][number]) => spot.rimLevel === low.spill && JSON.stringify(spot.stageArea) === JSON.stringify(stages);
  const take = (id: string) => edit([
    { kind: 'replace', path: ['site', 'lowSpots', `@${id}`, 'stageArea'], value: stages as never },
    { kind: 'replace', path: ['site', 'lowSpots', `@${id}`, 'rimLevel'], value: low.spill },
  ]);
  return (
    <div className="row">
      <p>{t('plan.groundOf', { bottom: low.bottom, spill: low.spill, volume: low.volume, area: low.area })}</p>
      {stages.length < 2 ? null : document.site.lowSpots.map((spot) => (isTaken(spot) ? <span key={spot.id} className="faint">{t('plan.taken')}</span> : <Button key={spot.id} onClick={() => take(spot.id)}>{t('plan.takeGround', { name: spot.name })}</Button>))}
    </div>
  );
}
