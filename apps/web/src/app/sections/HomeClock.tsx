import { CrewClock } from '../../features/daywork/index.ts';
import { OneTap } from '../../features/photos/camera.ts';
import './CrewTop.css';

/** The work clock of the crew's home, and the camera for what stands in no step; a file of its own, since they bring the keeping of records along. */
export function HomeClock({ jobId }: { readonly jobId: string }) {
  return <div className="crew-top"><CrewClock jobId={jobId} /><OneTap jobId={jobId} bare /></div>;
}
