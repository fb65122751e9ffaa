import type { CurvePoint, DesignDocument, DrainsTo, Part } from '../document/document.ts';

export type ChoiceKind = 'diversion' | 'collector' | 'pipe' | 'outlet' | 'basin' | 'pump' | 'line' | 'backup';

/** One way to build a thing: what it changes of the design. A field that is left out changes nothing. */
export interface Alternative {
  readonly id: string;
  readonly name: string;
  /** Fields of parts that it sets. */
  readonly set?: readonly { readonly part: string; readonly fields: Readonly<Record<string, unknown>> }[];
  readonly add?: readonly Part[];
  readonly remove?: readonly string[];
  /** Where catchments drain to. */
  readonly drains?: readonly { readonly catchment: string; readonly to: DrainsTo }[];
}

/** One thing to decide. The alternatives of a backup stand from none to the best: that order is its worth. */
export interface Choice {
  readonly id: string;
  readonly kind: ChoiceKind;
  readonly alternatives: readonly Alternative[];
}

/** What each alternative costs, in any unit that the caller likes: choice id, then alternative id. Nothing here knows money. */
export interface CostIndex {
  readonly base: number;
  readonly alternatives: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

const catchmentsOf = (document: DesignDocument, gutter: string): string[] =>
  document.site.catchments.filter(({ drainsTo }) => drainsTo.kind === 'part' && drainsTo.id === gutter).map(({ id }) => id);

/** Roof of one gutter diverted as drawn, or left to fall on the low spot under its eave. */
export function diversionChoice(document: DesignDocument, gutterId: string): Choice | null {
  const gutter = document.system.parts.find(({ id }) => id === gutterId);
  const catchments = catchmentsOf(document, gutterId);
  if (gutter?.kind !== 'gutter' || catchments.length === 0) return null;
  return {
    id: gutterId, kind: 'diversion',
    alternatives: [
      { id: 'no', name: gutter.name, drains: catchments.map((catchment) => ({ catchment, to: { kind: 'lowSpot', id: gutter.overflowsTo } })) },
      { id: 'yes', name: gutter.name, drains: catchments.map((catchment) => ({ catchment, to: { kind: 'part', id: gutterId } })) },
    ],
  };
}

/** Other sizes of one part: each alternative sets the same fields to other values. */
export function sizeChoice(kind: ChoiceKind, part: string, sizes: readonly { readonly id: string; readonly name: string; readonly fields: Readonly<Record<string, unknown>> }[]): Choice {
  return { id: part, kind, alternatives: sizes.map(({ id, name, fields }) => ({ id, name, set: [{ part, fields }] })) };
}

/** Other pumps in the place of one, by their datasheets. */
export function pumpChoice(part: string, pumps: readonly { readonly name: string; readonly curve: readonly CurvePoint[]; readonly solids: number }[]): Choice {
  return sizeChoice('pump', part, pumps.map(({ name, curve, solids }) => ({ id: name, name, fields: { curveName: name, curve, solids } })));
}
