import { FromCustomer } from '../../features/photos/index.ts';
import { SendingLink } from '../../features/sending/index.ts';
import { SiteSection } from '../../features/jobs/index.ts';
import { useMe } from '../../hooks/useMe.ts';
import type { JobSectionProps } from '../jobSections.tsx';

/** The call and the place, and what the customer shows of it. */
export function SitePart({ job, etag }: JobSectionProps) {
  const { may } = useMe();
  return (
    <div className="stack-wide">
      <SiteSection job={job} etag={etag} />
      {may('sending.manage') ? <SendingLink job={job} /> : null}
      <FromCustomer job={job} />
    </div>
  );
}
