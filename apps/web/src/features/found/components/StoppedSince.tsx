import { useText } from '../../../lib/reader.tsx';
import type { StopNow } from '../../../lib/stops.ts';

/** Since when the work is stopped, and whether the office knows. */
export function StoppedSince({ stop, timeZone }: { readonly stop: StopNow; readonly timeZone: string }) {
  const { t } = useText();
  return (
    <p role="status">
      <strong>{t(`found.kind.${stop.kind}`)}</strong>{' '}
      {t(stop.inOffice ? 'found.sinceOffice' : 'found.sincePhone', { at: stop.at }, { timeZone })}
      {stop.inOffice && stop.waiting > 0 ? ` ${t('found.moreWaits', { n: stop.waiting })}` : null}
    </p>
  );
}
