import { lazy, Suspense } from 'react';
import { useText } from '../../../lib/reader.tsx';

const gas = ['leave', 'touch', 'phone', 'call'] as const;

// The steps wait for nothing: what the gas company told comes from the phone's own store beside them.
const GasRule = lazy(() => import('../../../components/GasRule.tsx').then((rule) => ({ default: rule.GasRule })));

/** What to do when a buried line is hit, one short step a line, and whom to call with a tap. */
export function HitSteps({ danger, inSight = true }: { readonly danger: boolean; readonly inSight?: boolean }) {
  const { t } = useText();
  return (
    <>
      {danger ? <ol className="hit-steps">{gas.map((step) => <li key={step}>{t(`found.hit.gas.${step}`)}</li>)}</ol> : <p>{t('found.hit.other.keepOff')}</p>}
      {danger && inSight ? <Suspense fallback={null}><GasRule /></Suspense> : null}
      <div className="hit-calls">
        <a className={`button button-crew ${danger ? 'button-danger' : 'button-plain'}`} href="tel:911">{t('found.hit.call911')}</a>
        <a className="button button-plain button-crew" href="tel:811">{t('found.hit.call811')}</a>
      </div>
    </>
  );
}
