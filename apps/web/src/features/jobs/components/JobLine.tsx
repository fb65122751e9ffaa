import type { JobRow } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useText } from '../../../lib/reader.tsx';
import { LocateDates } from './LocateDates.tsx';
import { SmallSection } from './SmallSection.tsx';
import './JobLine.css';

interface JobLineProps {
  readonly job: JobRow;
  /** What this job needs, in a sentence. */
  readonly says: ReactNode;
  /** At the right end: days, a date. */
  readonly figure?: ReactNode;
}

/** One job as one ruled line: its small section, its name, what it needs, how long. */
export function JobLine({ job, says, figure }: JobLineProps) {
  const { t } = useText();
  return (
    <li className="job-line">
      <SmallSection stage={job.stage} held={job.holds.length > 0} system={job.system} />
      <div className="job-line-words">
        <Link to="/jobs/$jobId" params={{ jobId: job.id }} className="job-line-name">{job.title}</Link>
        <span className="faint">{t('jobs.line', { number: String(job.number), customer: job.customerName, address: job.address })}</span>
        <span>{says}</span>
        {job.locate ? <span className="faint"><LocateDates job={job} /></span> : null}
      </div>
      <span className="job-line-figure">{figure}</span>
    </li>
  );
}
