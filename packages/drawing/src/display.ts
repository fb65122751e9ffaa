import type { Severity } from '@yardfall/calc';
import type { Label, LabelCode } from './labels.ts';

export type Point = readonly [x: number, y: number];

/** Names of the color tokens; the web app's token file gives the colors. */
export type Role = 'ink' | 'faint' | 'water' | 'sill' | 'ground' | 'slab' | 'sound' | 'watch';

/** The crew's reading of a part; `plain` for every other reader. */
export type PartState = 'built' | 'next' | 'notYet' | 'held' | 'plain';

export type Weight = 'hair' | 'thin' | 'normal' | 'bold';
export type Dash = 'solid' | 'dash' | 'longDash' | 'dot' | 'chain';
export type Hatch = 'none' | 'paper' | 'soil' | 'concrete' | 'stone' | 'water' | 'held' | 'solid' | 'range';
export type MarkKind =
  | 'levelMark' | 'continues' | 'findingStop' | 'findingCaution' | 'findingNote' | 'photoTick' | 'break' | 'dutyPoint' | 'measuredPoint' | 'checkValve' | 'weepHole';

interface ItemBase {
  /** Id of the part, sill, low spot or outlet that the item belongs to; null for the rest. */
  readonly part: string | null;
  readonly role: Role;
  readonly state: PartState;
}

export interface LineItem extends ItemBase {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly weight: Weight;
  readonly dash: Dash;
  /** The lettering to which the line leads or whose level it draws; without it the line means nothing. None for a line that stands for itself. */
  readonly of?: LabelCode | null;
}

export interface PolygonItem extends ItemBase {
  readonly kind: 'polygon';
  readonly points: readonly Point[];
  readonly hatch: Hatch;
  readonly outlined: boolean;
}

/** Where a text would like to stand about its point. */
export type Side = 'above' | 'below' | 'right' | 'left';

export interface TextItem extends ItemBase {
  readonly kind: 'text';
  readonly at: Point;
  readonly label: Label;
  readonly side: Side;
  /** Below 1 is never dropped; a small picture drops the high ranks first. */
  readonly rank: number;
  /** False for axis figures, which stand exactly where they are put. */
  readonly movable: boolean;
}

export interface MarkItem extends ItemBase {
  readonly kind: 'mark';
  readonly mark: MarkKind;
  readonly at: Point;
  /** Position in the row when several marks stand at one place. */
  readonly index: number;
  /** Figure beside the mark (photo number), or the finding's code. */
  readonly value: string | null;
}

export type Item = LineItem | PolygonItem | TextItem | MarkItem;

/** Transparent shape by which a part is tapped or dragged. */
export interface HitArea {
  readonly part: string;
  readonly points: readonly Point[];
}

/** One level of the document that a vertical drag changes. */
export interface EditHandle {
  readonly part: string;
  readonly field: string;
  readonly at: Point;
  readonly level: number;
}

export interface Extent {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** What a kind of mark, line or hatch of this picture means. */
export interface KeyEntry {
  readonly label: Label;
  readonly symbol:
    | { readonly kind: 'line'; readonly role: Role; readonly weight: Weight; readonly dash: Dash; readonly state?: PartState }
    | { readonly kind: 'mark'; readonly role: Role; readonly mark: MarkKind }
    | { readonly kind: 'arrow'; readonly role: Role }
    | { readonly kind: 'hatch'; readonly role: Role; readonly hatch: Hatch };
}

export interface DisplayList {
  readonly name: 'section' | 'plan' | 'storm' | 'pump' | 'stage' | 'front';
  /** Metres for a section (x drawn station, y level) and for a plan; axis units for a graph. */
  readonly extent: Extent;
  /** Vertical scale divided by horizontal scale; null for a graph. */
  readonly exaggeration: number | null;
  /** Stretches of the section that are left out: drawn x, and the true stations of both ends. */
  readonly breaks: readonly { readonly x: number; readonly from: number; readonly to: number }[];
  readonly items: readonly Item[];
  /** The marks, lines and hatches that are used and do not say themselves what they are. */
  readonly key?: readonly KeyEntry[];
  readonly hits: readonly HitArea[];
  readonly handles: readonly EditHandle[];
  /** Where photos stand in a section. */
  readonly pins?: readonly Pin[];
  /** Drawn x and the true station that stands there, at the ends of the section and of each break. */
  readonly stations?: readonly Point[];
}

export interface Pin {
  readonly id: string;
  readonly at: Point;
}

export type FindingMark = 'findingStop' | 'findingCaution' | 'findingNote';

export function markOfSeverity(severity: Severity): FindingMark {
  if (severity === 'caution') return 'findingCaution';
  return severity === 'note' ? 'findingNote' : 'findingStop';
}
