import type { BuiltLevel, BuiltPipe, DesignDocument, Part } from '@yardfall/calc';
import type { FieldFact } from '../checklists.ts';
import { causality, type Follows } from './causality.ts';
import { mistyped } from './failures.ts';
import { type LaidLine, withEnds } from './laidLine.ts';
import { headReadings, type Reading } from './readings.ts';

/** Levels that are shot again when a part is built, and the measure of the checklist that shoots each; null where none does. */
export const builtLevels = {
  channel: { invertUp: 'invertUp', invertDown: 'invertDown', grateLevel: null },
  catchBasin: { grateLevel: 'rimLevel', invertOut: null },
  pipe: { invertUp: 'invertUp', invertDown: 'invertDown' },
  basin: { rimLevel: 'rimLevel', inletInvert: null, offLevel: 'offLevel', onLevel: 'onLevel', alarmLevel: 'alarmLevel' },
  outlet: { level: 'lidLevel' },
} as const satisfies Partial<Record<Part['kind'], Readonly<Record<string, string | null>>>>;

/** An item of the checklist with the facts that count. */
export interface RecordedItem {
  readonly part: string | null;
  readonly facts: readonly FieldFact[];
}

export interface Built {
  readonly levels: readonly BuiltLevel[];
  readonly pipes: readonly BuiltPipe[];
}

/** What has been shot of the parts of a design. Where two phones disagree the later id is taken: the item is disputed and held until somebody chooses. */
export function builtFrom(document: DesignDocument, items: readonly RecordedItem[]): Built {
  const levels: BuiltLevel[] = [];
  const pipes: BuiltPipe[] = [];
  for (const part of document.system.parts) {
    const facts = withoutSlips(items.filter((item) => item.part === part.id).flatMap((item) => item.facts));
    const follows = causality(facts.map((fact) => ({ fact })));
    for (const [field, measure] of measuresOf(part)) {
      const reading = lastReading(facts, measure, follows);
      if (reading === null) continue;
      if (reading.fact.kind !== 'profile') levels.push({ part: part.id, field, level: reading.value });
      else if (!pipes.some((pipe) => pipe.part === part.id)) pipes.push({ part: part.id, shots: wholeShots(part, reading.fact.shots) });
    }
  }
  return { levels, pipes };
}

/** The shots of a pipe from end to end: what is not shot yet is as designed. */
export function wholeShots(part: Part, shots: BuiltPipe['shots']): BuiltPipe['shots'] {
  return part.kind === 'pipe' && part.length > 0 ? withEnds({ length: part.length, up: part.invertUp, down: part.invertDown, joints: 0 }, [...shots]) : shots;
}

function withoutSlips(facts: readonly FieldFact[]): readonly FieldFact[] {
  const slips = mistyped(facts.map((fact) => ({ fact })));
  return facts.filter(({ id }) => !slips.has(id));
}

/** What was last recorded of a measure; null when nothing was. `line` tells where the ends of a pipe are. */
export function readingOf(facts: readonly FieldFact[], measure: string, line: LaidLine | null = null): number | null {
  return lastReading(facts, measure, causality(facts.map((fact) => ({ fact }))), line)?.value ?? null;
}

function lastReading(facts: readonly FieldFact[], measure: string, follows: Follows, line: LaidLine | null = null): Reading | null {
  return headReadings(facts, measure, follows, line).reduce<Reading | null>((last, one) => (last !== null && last.fact.id > one.fact.id ? last : one), null);
}

function measuresOf({ kind }: Part): [field: string, measure: string][] {
  if (!Object.hasOwn(builtLevels, kind)) return [];
  return Object.entries<string | null>(builtLevels[kind as keyof typeof builtLevels]).flatMap(([field, measure]): [string, string][] => (measure === null ? [] : [[field, measure]]));
}
