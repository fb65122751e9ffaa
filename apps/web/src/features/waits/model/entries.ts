import { outletQuestions, type FoldedEntry, type SurveyChoice, type SurveyDraft } from '@yardfall/contracts';
import { madeAt } from '../../../lib/madeAt.ts';
import type { JobAnswer, OutboxEntry } from '../../../lib/outbox.ts';

/** When it was recorded. What has no time of its own was kept when its id was made. */
export function timeOf(entry: OutboxEntry): string {
  if (entry.kind === 'photo') return entry.meta.takenAt;
  if (entry.kind === 'daywork') return entry.entry.at;
  if (entry.kind === 'foundMore' || entry.kind === 'photoMore') return entry.more.at;
  return entry.kind === 'found' || entry.kind === 'proof' || entry.kind === 'locate' || entry.kind === 'answer' ? madeAt(entry.id) : entry.fact.deviceTime;
}

interface Detail {
  /** Whose it is, as a code of the catalogues or as it was written; empty for nobody's. */
  readonly of: string;
  readonly ofIsCode: boolean;
  readonly code: string;
}

/** Which of its kind it is, as a code of the catalogues; what was answered stands after what was asked. */
export function detailOf(entry: OutboxEntry): Detail | null {
  if (entry.kind === 'surveyFact') return { of: '', ofIsCode: false, code: `ui.waits.entry.${entry.fact.kind}` };
  if (entry.kind === 'answer') return answerDetail(entry.answer);
  if (entry.kind !== 'locate') return null;
  const { act } = entry;
  return { of: act.body.utility, ofIsCode: false, code: act.what === 'event' ? `locates.event.${act.body.kind}` : `locates.answer.${act.body.answer}` };
}

function answerDetail({ what, said }: JobAnswer): Detail {
  if (what === 'permit') return { ofIsCode: true, of: `permits.kind.${said.kind}`, code: `permits.state.${said.state}` };
  if (what === 'outlet') return { ofIsCode: true, of: `designs.question.${outletQuestions[said.question]}`, code: `permits.state.${said.state}` };
  return { ofIsCode: true, of: `checklists.private.${said.question}`, code: `locates.privateState.${said.state}` };
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
