import { checklists, tasks, type DayworkTask } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../../../lib/query.ts';

/** What hours of this job are booked on: the stages that its checklist has, and what stands in no list. */
export function useTasks(jobId: string): readonly DayworkTask[] {
  const { data } = useQuery(read(checklists.read, { params: { jobId } }));
  const groups = new Set(data?.data.items.map(({ group }) => group));
  return tasks.filter((task) => data === undefined || task === 'travel' || task === 'other' || groups.has(task));
}
