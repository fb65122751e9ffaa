import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { TextField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';

/** Number and time that the center gave, in the time of the property. */
export function GivenByCenter({ job, noTime }: { readonly job: Pick<Job, 'timeZone'>; readonly noTime: boolean }) {
  const { t } = useText();
  const [now] = useState(() => wallClockIn(job.timeZone, new Date()));
  return (
    <>
      <TextField label={t('locates.number')} name="number" required maxLength={60} autoComplete="off" />
      <TextField label={t('locates.requestedAt')} hint={t('locates.requestedHint')} name="requestedAt" type="datetime-local" defaultValue={now} required error={noTime ? t('ui.needed') : undefined} />
    </>
  );
}
