import { Checklist } from '../../features/checklists/index.ts';
import { DayworkSection } from '../../features/daywork/index.ts';
import { FoundSection } from '../../features/found/index.ts';
import { PhotosSection } from '../../features/photos/index.ts';
import type { JobSectionProps } from '../jobSections.tsx';

/** The work on site: stop work first, then the list, then what was photographed. */
export function WorkSection({ job }: JobSectionProps) {
  return (
    <div className="stack-wide">
      <FoundSection job={job} />
      <Checklist jobId={job.id} released={job.buildRevisionId !== null} />
      <PhotosSection job={job} />
      <DayworkSection job={job} />
    </div>
  );
}
