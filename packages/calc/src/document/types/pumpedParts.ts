// The basin, its pumps and their line.
import type { PartBase } from './gravityParts.ts';

export interface Basin extends PartBase {
  readonly kind: 'basin';
  readonly diameter: number;
  readonly floorLevel: number;
  readonly rimLevel: number;
  readonly inletInvert: number;
  readonly offLevel: number;
  readonly onLevel: number;
  readonly alarmLevel: number;
  /** Calibrated marks of a basin that is no cylinder: level and volume below it, both rising; empty for a cylinder. */
  readonly marks: readonly { readonly level: number; readonly volume: number }[];
  readonly wall: 'solid' | 'perforated';
  readonly floatClearance: number;
  readonly floatKind: 'vertical' | 'electronic' | 'tether';
  /** Concrete collar against flotation [m3] and the empty weight of basin and lid [kg]. */
  readonly collarVolume: number;
  readonly emptyMass: number;
  readonly lidFixed: boolean;
}

export interface CurvePoint {
  readonly flow: number;
  readonly head: number;
}

/** Drains to its check valve or discharge line; stands in `basin`. */
export interface Pump extends PartBase {
  readonly kind: 'pump';
  readonly basin: string;
  readonly curveName: string;
  /** Datasheet points, flow rising, head falling; the last has flow 0 at shut-off or the first has. */
  readonly curve: readonly CurvePoint[];
  readonly solids: number;
  readonly minSubmergence: number;
  readonly role: 'duty' | 'standby';
  /** Own start level of a standby pump; null: it starts at the basin's alarm level. A duty pump starts at the basin's on level. */
  readonly startLevel: number | null;
  readonly power: 'mains' | 'battery';
  /** Energy that a battery holds for it [J] and the power that it draws [W]; null on the mains. */
  readonly energy: number | null;
  readonly inputPower: number | null;
}

export interface CheckValve extends PartBase {
  readonly kind: 'checkValve';
  readonly equivalentLength: number;
  readonly present: boolean;
}

/** A small hole in the riser below the check valve that lets trapped air out. Belongs to `pump`. */
export interface WeepHole extends PartBase {
  readonly kind: 'weepHole';
  readonly pump: string;
  readonly diameter: number;
}

export interface Fitting {
  readonly kind: 'bend90' | 'bend45' | 'tee' | 'ballValve';
  readonly count: number;
  readonly equivalentLength: number;
}

export interface DischargeLine extends PartBase {
  readonly kind: 'dischargeLine';
  readonly innerDiameter: number;
  readonly nominal: string;
  readonly length: number;
  readonly hazenWilliamsC: number;
  readonly fittings: readonly Fitting[];
  /** Highest point of the line when above the outlet's water surface, else null. */
  readonly highPoint: number | null;
  /** Lowest sag of the line that keeps water when it empties; null when it empties whole. */
  readonly lowestSag: number | null;
  /** Absolute roughness of the wall for Darcy-Weisbach outside the range of Hazen-Williams [m]. */
  readonly wallRoughness: number;
  readonly coverMin: number;
}
