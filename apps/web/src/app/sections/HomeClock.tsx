import { CrewClock } from '../../features/daywork/index.ts';
import './CrewTop.css';

/** The work clock of the crew's home; a file of its own, since it brings the keeping of records along. */
export function HomeClock({ jobId }: { readonly jobId: string }) {
  return <div className="crew-top"><CrewClock jobId={jobId} /></div>;
}
