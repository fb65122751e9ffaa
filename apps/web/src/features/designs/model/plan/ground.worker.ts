import { contourLines, documentLowSpots, findLowSpots, flowArrows, planGround, triangulateSurvey, waterExtent, type DesignDocument, type Params, type StageArea } from '@yardfall/calc';
import type { PlanGround } from '@yardfall/drawing';

export interface GroundRequest {
  readonly site: DesignDocument['site'];
  /** Level at which water is drawn; null for the level at which each low spot spills. */
  readonly level: number | null;
  /** Step between contours [m]. */
  readonly interval: number;
}

export interface GroundLow {
  readonly bottom: number;
  readonly spill: number;
  readonly volume: number;
  readonly area: number;
  readonly stageArea: readonly StageArea[];
}

export type GroundAnswer =
  | { readonly ok: true; readonly ground: PlanGround; readonly lows: readonly GroundLow[] }
  | { readonly ok: false; readonly code: string; readonly params: Params };

/** A yard has fewer contours than can be read. */
const mostContours = 60;
const mostArrows = 400;

self.onmessage = (event: MessageEvent<GroundRequest>) => {
  self.postMessage(answer(event.data));
};

function answer({ site, level, interval }: GroundRequest): GroundAnswer {
  try {
    const ground = triangulateSurvey(planGround(site));
    const drainage = findLowSpots(ground);
    const found = documentLowSpots(ground, drainage).flatMap((low) => {
      const spot = drainage.lowSpots[low.index];
      return spot === undefined ? [] : [{ low, spot }];
    }).toSorted((a, b) => b.spot.volume - a.spot.volume);
    const spots = found.map(({ spot }) => spot);
    const range = Math.max(...ground.level) - Math.min(...ground.level);
    const step = range / interval > mostContours ? interval * Math.ceil(range / interval / mostContours) : interval;
    const water = spots.flatMap((spot) => {
      const at = Math.min(level ?? spot.topLevel, spot.topLevel);
      return at > spot.bottom.level ? waterExtent(ground, spot, at) : [];
    });
    return {
      ok: true,
      ground: {
        contours: contourLines(ground, step), arrows: flowArrows(ground).slice(0, mostArrows), water,
        lowSpots: spots.map(({ bottom, spillPoint, spillLevel }) => ({ bottom, spillPoint, spillLevel })),
      },
      lows: found.map(({ low: { rimLevel, stageArea }, spot: { bottom, volume, area } }) => ({ bottom: bottom.level, spill: rimLevel, volume, area, stageArea })),
    };
  } catch (error) {
    const known = error as { readonly code?: unknown; readonly params?: Params };
    if (typeof known.code !== 'string') throw error;
    return { ok: false, code: known.code, params: known.params ?? {} };
  }
}
