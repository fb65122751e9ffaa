import type { DigVerdict } from '@yardfall/contracts';
import { useText } from '../../../lib/reader.tsx';
import { Notice } from '../../../components/Notice.tsx';

interface VerdictBlockProps {
  readonly verdict: DigVerdict;
  readonly timeZone: string;
}

/** "May dig" or every reason why not. */
export function VerdictBlock({ verdict, timeZone }: VerdictBlockProps) {
  const { t, say } = useText();
  if (verdict.mayDig) {
    return (
      <p className="may-dig">
        <svg viewBox="0 0 24 24" width="24" height="24" aria-hidden="true"><circle cx="12" cy="12" r="9" fill="currentColor" /><path className="may-dig-tick" d="M7.5 12.5l3 3 6-7" fill="none" strokeWidth="2" /></svg>
        {t('locates.mayDig')}
      </p>
    );
  }
  return (
    <Notice severity="stop" title={t('locates.mayNotDig')}>
      <ul>{verdict.reasons.map((reason) => <li key={JSON.stringify(reason)}>{say(reason.code, reason.params, { timeZone })}</li>)}</ul>
    </Notice>
  );
}
