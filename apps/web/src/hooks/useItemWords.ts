import { checklists, itemTemplates, itemText } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../lib/query.ts';
import { useText } from '../lib/reader.tsx';

/** What a step of the work says, by its key: as this job's list words it, or as every job's does where the list is not there. */
export function useItemWords(jobId: string): (key: string) => string {
  const { say } = useText();
  const items = useQuery({ ...read(checklists.read, { params: { jobId } }), retry: false }).data?.data.items ?? [];
  return (key) => {
    const item = items.find((one) => one.key === key);
    if (item !== undefined) return say(itemText(item.requirement, 'what'), item.requirement.params);
    const template = itemTemplates.find(({ id }) => id === key.split(':')[0]);
    return template === undefined ? key : say(itemText({ template: template.id, params: { ...template.params } }, 'what'), template.params);
  };
}
