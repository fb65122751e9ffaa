import type { DesignDocument, Part } from '@yardfall/calc';
import { builtLevels, lineOf, readingOf, type Checklist } from '@yardfall/contracts';

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

type AskedKind = keyof typeof builtLevels;
type FieldsOf<K extends AskedKind> = K extends AskedKind ? keyof (typeof builtLevels)[K] : never;
export type LevelField = FieldsOf<AskedKind>;

function isAsked(kind: Part['kind']): kind is AskedKind {
  return Object.hasOwn(builtLevels, kind);
}

export function levelsAsked(document: DesignDocument, checklist: Checklist | null): readonly LevelAsked[] {
  return document.system.parts.flatMap((part) => {
    if (!isAsked(part.kind)) return [];
    return Object.entries<string | null>(builtLevels[part.kind]).flatMap(([field, measure]) => {
      const designed: unknown = Reflect.get(part, field);
      return typeof designed === 'number' ? [{ part: part.id, name: part.name, field: field as LevelField, designed, measured: measure === null ? null : measuredOf(checklist, part.id, measure) }] : [];
    });
  });
}

function measuredOf(checklist: Checklist | null, part: string, name: string): number | null {
  const items = (checklist?.items ?? []).filter((item) => item.part === part);
  const line = items.map(({ requirement }) => lineOf(requirement)).find((one) => one !== null) ?? null;
  return readingOf(items.flatMap(({ facts }) => facts.flatMap(({ fact, verdict }) => (verdict === 'kept' ? [fact] : []))), name, line);
}
