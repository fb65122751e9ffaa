import type { DesignDocument, Part } from '@yardfall/calc';
import type { Checklist } from '@yardfall/contracts';

/** How a level is shown: its unit [m] and decimals. */
const shown = {
  us: { unit: 0.3048, decimals: 2, as: new Intl.NumberFormat('en-US', { maximumFractionDigits: 2, useGrouping: false }) },
  metric: { unit: 1, decimals: 3, as: new Intl.NumberFormat('en-US', { maximumFractionDigits: 3, useGrouping: false }) },
} as const;

/** The difference of the two levels as they are shown, so that the row can be checked by eye; the record keeps the exact one. */
export function differenceShown(built: number, designed: number, units: keyof typeof shown): number {
  const { unit, decimals, as } = shown[units];
  const figure = (level: number): number => Number(as.format(level / unit));
  return Number((figure(built) - figure(designed)).toFixed(decimals)) * unit || 0;
}

export interface LevelAsked {
  readonly part: string;
  readonly name: string;
  readonly field: LevelField;
  readonly designed: number;
  /** What the crew measured of it; null when nobody did. */
  readonly measured: number | null;
}

/** Levels that are shot again when the part is built, and the measure of the checklist that shot each already. */
const asked = {
  channel: { invertUp: 'invertUp', invertDown: 'invertDown', grateLevel: null },
  catchBasin: { grateLevel: 'rimLevel', invertOut: null },
  pipe: { invertUp: 'invertUp', invertDown: 'invertDown' },
  basin: { rimLevel: null, inletInvert: null, offLevel: 'offLevel', onLevel: 'onLevel', alarmLevel: 'alarmLevel' },
  outlet: { level: 'lidLevel' },
} as const satisfies Partial<Record<Part['kind'], Readonly<Record<string, string | null>>>>;

type AskedKind = keyof typeof asked;
type FieldsOf<K extends AskedKind> = K extends AskedKind ? keyof (typeof asked)[K] : never;
export type LevelField = FieldsOf<AskedKind>;

function isAsked(kind: Part['kind']): kind is AskedKind {
  return Object.hasOwn(asked, kind);
}

export function levelsAsked(document: DesignDocument, checklist: Checklist | null): readonly LevelAsked[] {
  return document.system.parts.flatMap((part) => {
    if (!isAsked(part.kind)) return [];
    return Object.entries<string | null>(asked[part.kind]).flatMap(([field, measure]) => {
      const designed: unknown = Reflect.get(part, field);
      return typeof designed === 'number' ? [{ part: part.id, name: part.name, field: field as LevelField, designed, measured: measure === null ? null : measuredOf(checklist, part.id, measure) }] : [];
    });
  });
}

function measuredOf(checklist: Checklist | null, part: string, name: string): number | null {
  const facts = (checklist?.items ?? []).filter((item) => item.part === part).flatMap((item) => item.facts);
  const last = facts.findLast(({ fact, verdict }) => verdict === 'kept' && fact.kind === 'measured' && fact.name === name)?.fact;
  return last?.kind === 'measured' ? last.value : null;
}
