import { FromCustomer } from '../../features/photos/index.ts';
import { Levels } from '../../features/surveys/index.ts';
import type { JobSectionProps } from '../jobSections.tsx';

/** The survey, and beside it what the customer saw in the rain. */
export function LevelsPart(props: JobSectionProps) {
  return (
    <div className="stack-wide">
      <Levels {...props} />
      <FromCustomer job={props.job} />
    </div>
  );
}
