import { groupText, itemTemplates, type DayworkTask } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';

const all = itemTemplates.map(({ id }) => id);

/** A task in words: the stages of the checklist by their headings. */
export function taskName(task: DayworkTask, { say }: Pick<Text, 'say'>): string {
  return task === 'travel' || task === 'other' ? say(`daywork.task.${task}`) : say(groupText(task, all));
}
