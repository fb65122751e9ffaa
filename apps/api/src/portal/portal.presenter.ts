import { PUMP_DOWN_LIMITS, type DesignDocument, type Evaluation } from '@yardfall/calc';
import { photoAsIs, type PhotoMark, type Portal } from '@yardfall/contracts';
import { requirementOf } from '../checklists/live.ts';
import type { ChecklistItem, FieldFact, Handover, Photo, PhotoAddition as PhotoAdditionRow, ProofTest } from '../generated/prisma/client.ts';
import { dayOf } from '../jobs/propertyDay.ts';
import type { CodedText } from '../offers/why.rules.ts';
import { presentAddition } from '../photos/photos.presenter.ts';
import { carePlan } from './care.rules.ts';

/** The frozen document and the stored family of storms: the page computes nothing and learns no cost. */
export function presentDrawing(document: DesignDocument, evaluation: Evaluation): Portal['drawing'] {
  const [sill] = [...document.site.sills].sort((a, b) => a.level - b.level);
  if (sill === undefined) return null;
  return {
    document, sillLevel: sill.level,
    family: evaluation.results.family.map(({ case: what, returnPeriod, maxLevel, minutesOverSill }) => ({ case: what, returnPeriod, maxLevel, minutesOverSill })),
  };
}

export function presentWaiver(fact: FieldFact, holdPoint: string | null, by: string): Portal['waivers'][number] {
  const { reason } = fact.payload as { reason?: string };
  return { holdPoint: holdPoint ?? '', item: fact.itemKey ?? '', reason: reason ?? '', by, at: fact.serverTime.toISOString() };
}

/** Rules of the company under which the job was released; told once, however many parts the step stands for. */
export function weakerRules(rows: readonly ChecklistItem[]): Portal['weaker'] {
  const told = rows.flatMap((row): Portal['weaker'] => {
    const { minPhotos, params: { weaker, weakerBy, builtInPhotos, ownLimits } } = requirementOf(row);
    return weaker === undefined ? [] : [{ item: row.template, photos: minPhotos, builtIn: Number(builtInPhotos ?? minPhotos), limits: typeof ownLimits === 'number' ? ownLimits : null, reason: String(weaker), by: String(weakerBy) }];
  });
  return [...new Map(told.map((rule) => [rule.item, rule])).values()];
}

/** With what was drawn over it and written to it, also after it was taken. */
export function presentPhoto({ photoAdditions_photo: added, ...row }: Photo & { readonly photoAdditions_photo: readonly PhotoAdditionRow[] }): Portal['photos'][number] {
  const photo = { id: row.id, takenAt: row.takenAt.toISOString(), itemKey: row.itemKey, part: row.part, note: row.note, marks: row.marks as PhotoMark[] };
  const { note, itemKey, marks } = photoAsIs(photo, added.map((one) => ({ ...presentAddition(one), by: null })));
  return { id: photo.id, note, takenAt: photo.takenAt, itemKey, marks: [...marks] };
}

export function presentProof(row: ProofTest): Portal['proof'] {
  const { meanFlow, uncertainty, predictedFlow, difference } = jsonOf<{ meanFlow: number; uncertainty: number; predictedFlow: number; difference: number }>(row.content);
  return { measured: meanFlow, uncertainty, predicted: predictedFlow, difference, within: PUMP_DOWN_LIMITS.pass, verdict: row.verdict, at: row.recordedAt.toISOString() };
}

export function presentHandover(row: Handover, document: DesignDocument): Portal['handover'] {
  const { breaker, ties = null } = jsonOf<{ breaker: string; ties?: NonNullable<Portal['handover']>['ties'] }>(row.content);
  return { handedOverAt: row.handedOverAt.toISOString(), warrantyFrom: dayOf(row.warrantyFrom), warrantyUntil: dayOf(row.warrantyUntil), breaker, care: carePlan(document), ties };
}

export const whyOf = (texts: readonly CodedText[]): CodedText[] => texts.filter(({ code }) => code.startsWith('portal.why.'));

function jsonOf<T>(bytes: Uint8Array): T {
  return JSON.parse(Buffer.from(bytes).toString('utf8')) as T;
}
