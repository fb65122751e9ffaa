import type { FoldedEntry, SurveyChoice, SurveyDraft } from '@yardfall/contracts';
import { madeAt } from '../../../lib/madeAt.ts';
import type { OutboxEntry } from '../../../lib/outbox.ts';

/** When it was recorded. What has no time of its own was kept when its id was made. */
export function timeOf(entry: OutboxEntry): string {
  if (entry.kind === 'photo') return entry.meta.takenAt;
  if (entry.kind === 'daywork') return entry.entry.at;
  if (entry.kind === 'foundMore') return entry.more.at;
  return entry.kind === 'found' || entry.kind === 'proof' || entry.kind === 'locate' ? madeAt(entry.id) : entry.fact.deviceTime;
}

/** Which of its kind it is, as a code of the catalogues; what a utility answered stands after its name. */
export function detailOf(entry: OutboxEntry): { readonly of: string; readonly code: string } | null {
  if (entry.kind === 'surveyFact') return { of: '', code: `ui.waits.entry.${entry.fact.kind}` };
  if (entry.kind !== 'locate') return null;
  const { act } = entry;
  return act.what === 'event' ? { of: act.body.utility, code: `locates.event.${act.body.kind}` } : { of: act.body.utility, code: `locates.answer.${act.body.answer}` };
}

export type ChoiceLine =
  | { readonly kind: 'text'; readonly value: string }
  | { readonly kind: 'level'; readonly value: number }
  | { readonly kind: 'code'; readonly value: string };

/** What a choice says, line by line: names, levels in metres, and codes of the catalogues. */
export function linesOf({ value }: SurveyChoice): readonly ChoiceLine[] {
  if (value === null) return [{ kind: 'code', value: 'ui.waits.struck' }];
  if (typeof value === 'string') return [{ kind: 'code', value: `surveys.mode.${value}` }];
  if (Array.isArray(value)) return value.map(({ level }) => ({ kind: 'level', value: level }));
  return Object.entries(value).flatMap(([name, one]): ChoiceLine[] => {
    if (name === 'id' || name === 'place') return [];
    if (name === 'role') return [{ kind: 'code', value: `surveys.role.${String(one)}` }];
    if (typeof one === 'string') return one === '' ? [] : [{ kind: 'text', value: one }];
    return typeof one === 'number' ? [{ kind: 'level', value: one }] : [];
  });
}

/** The fact with which a person chooses: it knows of all that was said. */
export function chosen({ kind, key, seen }: FoldedEntry, { value }: SurveyChoice): SurveyDraft {
  if (value === null) return { kind: 'struck', entry: key, seen: [...seen], reason: '' };
  return { kind, entry: key, seen: [...seen], value } as SurveyDraft;
}
