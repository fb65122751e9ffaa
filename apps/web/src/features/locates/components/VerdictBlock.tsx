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
      <p className="may-dig">{t('locates.mayDig')}</p>
    );
  }
  return (
    <Notice severity="stop" title={t('locates.mayNotDig')}>
      <ul className="ticket-history">{verdict.reasons.map((reason) => <li key={JSON.stringify(reason)}>{say(reason.code, reason.params, { timeZone })}</li>)}</ul>
    </Notice>
  );
}
