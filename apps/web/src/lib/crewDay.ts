import type { JobRow } from '@yardfall/contracts';

const inTheGround: readonly JobRow['stage'][] = ['installing', 'released', 'proving'];

/** The jobs that this crew member goes out for, the one in hand first. */
export function crewDay<J extends Pick<JobRow, 'stage' | 'assignments'>>(jobs: readonly J[], memberId: string): readonly J[] {
  return jobs
    .filter((job) => inTheGround.includes(job.stage) && job.assignments.some((one) => one.memberId === memberId && one.role === 'crew'))
    .sort((a, b) => inTheGround.indexOf(a.stage) - inTheGround.indexOf(b.stage));
}
