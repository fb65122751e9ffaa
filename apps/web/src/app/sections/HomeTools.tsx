import { CrewClock } from '../../features/daywork/index.ts';
import { LineHit, StopButton } from '../../features/found/index.ts';
import './CrewTop.css';

/** To stop the work, and what to do when a line is hit. */
export function HomeStops({ jobId }: { readonly jobId: string }) {
  return <div className="crew-top"><StopButton jobId={jobId} /><LineHit /></div>;
}

export function HomeClock({ jobId }: { readonly jobId: string }) {
  return <div className="crew-top"><CrewClock jobId={jobId} /></div>;
}
