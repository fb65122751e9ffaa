import type { JobRow } from '@yardfall/contracts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useText } from '../../../lib/reader.tsx';
import { wholeDay } from '../../../lib/wholeDay.ts';

/** When the ticket of a job lets dig, by when it is renewed and when it ends, in the time of the property. Nothing without a ticket. */
export function LocateDates({ job }: { readonly job: Pick<JobRow, 'locate' | 'timeZone'> }) {
  const { t, q } = useText();
  const now = useMinute();
  if (!job.locate) return null;
  const { number, legalStartAt: start, renewByAt: renew, expiresAt: end } = job.locate;
  const zone = { timeZone: job.timeZone };
  if (start === null || renew === null || end === null) return <>{t('jobs.locate.noClock', { number })}</>;
  const said = (moment: string, which: 'start' | 'end') => {
    const day = wholeDay(moment, job.timeZone, which);
    return day === null ? q('dateTime', moment, zone) : which === 'start' ? q('date', day) : t('locates.throughDay', { day });
  };
  if (Date.parse(end) <= now) return <>{t('jobs.locate.over', { number, end: said(end, 'end') })}</>;
  return <>{t('jobs.locate.clock', { number, start: said(start, 'start'), renew: said(renew, 'end'), end: said(end, 'end') })}</>;
}
