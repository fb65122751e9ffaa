import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { TextField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';

/** Number and time that the center gave, in the time of the property, and what it wrote of start and end. */
export function GivenByCenter({ job, noTime, noSpan }: { readonly job: Pick<Job, 'timeZone'>; readonly noTime: boolean; readonly noSpan: boolean }) {
  const { t } = useText();
  const [now] = useState(() => wallClockIn(job.timeZone, new Date()));
  return (
    <>
      <TextField label={t('locates.number')} name="number" required maxLength={60} autoComplete="off" />
      <TextField label={t('locates.requestedAt')} hint={t('locates.requestedHint')} name="requestedAt" type="datetime-local" defaultValue={now} required error={noTime ? t('ui.needed') : undefined} />
      <GivenSpan noSpan={noSpan} />
    </>
  );
}

interface GivenSpanProps {
  readonly noSpan: boolean;
  /** As entered before, in the form of a date-and-time field. */
  readonly before?: { readonly startAt: string; readonly expiresAt: string };
}

/** Start and end as they stand on the ticket. The rule of the state counts beside them, and of each the stricter. */
export function GivenSpan({ noSpan, before }: GivenSpanProps) {
  const { t } = useText();
  return (
    <>
      <TextField label={t('locates.givenStart')} hint={t('locates.givenHint')} name="startAt" type="datetime-local" defaultValue={before?.startAt} optional />
      <TextField label={t('locates.givenEnd')} name="expiresAt" type="datetime-local" defaultValue={before?.expiresAt} optional error={noSpan ? t('locates.givenWrong') : undefined} />
    </>
  );
}
