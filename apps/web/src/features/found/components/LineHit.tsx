import { useText } from '../../../lib/reader.tsx';
import './found.css';

const gas = ['leave', 'touch', 'phone', 'call'] as const;

/** What to do when a buried line is hit, one short step a line, to be read while walking away. */
export function LineHit() {
  const { t } = useText();
  return (
    <details className="line-hit">
      <summary>{t('found.hit')}</summary>
      <h3>{t('found.hit.gas')}</h3>
      <ol>{gas.map((step) => <li key={step}>{t(`found.hit.gas.${step}`)}</li>)}</ol>
      <h3>{t('found.hit.other')}</h3>
      <p>{t('found.hit.other.keepOff')}</p>
      <p className="faint">{t('ui.caution.gasStrike.source')}</p>
    </details>
  );
}
