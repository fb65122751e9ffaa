import type { Job } from '@yardfall/contracts';
import { NextItem } from '../../features/checklists/next.ts';
import { CrewClock } from '../../features/daywork/index.ts';
import { OneTap } from '../../features/photos/camera.ts';
import { useMe } from '../../hooks/useMe.ts';
import { LineHit, StopButton } from '../../features/found/stop.ts';
import './CrewTop.css';

const inTheGround: readonly Job['stage'][] = ['released', 'installing', 'proving'];

/** Before anything else while the job is in the ground: the next step, the two ways to stop, and under them the clock and the camera. */
export function CrewTop({ job }: { readonly job: Job }) {
  const { may } = useMe();
  if (!inTheGround.includes(job.stage) || job.buildRevisionId === null) return null;
  return (
    <div className="crew-top no-print">
      <NextItem jobId={job.id} />
      <StopButton jobId={job.id} timeZone={job.timeZone} />
      <LineHit jobId={job.id} timeZone={job.timeZone} />
      <CrewClock jobId={job.id} />
      {may('photos.add') ? <OneTap jobId={job.id} bare /> : null}
    </div>
  );
}
