/** A sheet of paper, landscape. */
export type PaperName = 'letter' | 'a4';

/**
 * Points of paper [1/72 in] in one unit of a sheet. Lettering, marks and hatches keep the sizes in units that they have on screen in pixels;
 * at six tenths the lettering is 7.8 points high.
 */
export const unitPoints = 0.6;

const pointsPerInch = 72;
const metresPerInch = 0.0254;
const pointsPerMillimetre = pointsPerInch / 25.4;

/** Metres of paper in one unit. */
const unitMetres = (unitPoints / pointsPerInch) * metresPerInch;

const points: Readonly<Record<PaperName, readonly [width: number, height: number]>> = {
  letter: [11 * pointsPerInch, 8.5 * pointsPerInch],
  a4: [297 * pointsPerMillimetre, 210 * pointsPerMillimetre],
};

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A sheet in units, from its upper left corner: the field for the drawing and the title block under it. */
export interface Paper {
  readonly name: PaperName;
  readonly width: number;
  readonly height: number;
  readonly border: Rect;
  readonly field: Rect;
  readonly block: Rect;
}

/** Half an inch, which every printer leaves white, and the height of the title block [units]. */
const edge = 60;
const blockHeight = 104;

export function paperOf(name: PaperName): Paper {
  const [width, height] = points[name].map((size) => size / unitPoints) as [number, number];
  const border = { x: edge, y: edge, width: width - 2 * edge, height: height - 2 * edge };
  return {
    name, width, height, border,
    field: { x: edge + 10, y: edge + 8, width: border.width - 20, height: border.height - blockHeight - 16 },
    block: { x: edge, y: height - edge - blockHeight, width: border.width, height: blockHeight },
  };
}

export type ScaleUnit = 'foot' | 'metre';

/** A scale that a rule can measure: one to so many, as it is said in feet for an inch or as a ratio. */
export interface Scale {
  readonly ratio: number;
  /** Metres of the yard in one unit of the sheet. */
  readonly metres: number;
}

/** Feet for an inch, and ratios, that stand on a scale rule. */
const feetPerInch = [1, 2, 4, 5, 10, 20, 30, 40, 50, 60, 100, 200, 500];
const ratios = [10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000];

/** From the largest drawing to the smallest. */
export function scalesOf(unit: ScaleUnit): readonly Scale[] {
  const list = unit === 'foot' ? feetPerInch.map((feet) => feet * 12) : ratios;
  return list.map((ratio) => ({ ratio, metres: ratio * unitMetres }));
}

/** The smallest horizontal scale to which a profile is taken before it breaks over sheets: 1 in = 10 ft, 1:100. */
export const smallestWhole: Readonly<Record<ScaleUnit, number>> = { foot: 120, metre: 100 };
