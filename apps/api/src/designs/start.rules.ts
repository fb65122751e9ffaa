import { emptySite, siteOfSurvey, upgradeDocument, type DesignDocument, type RainTable, type SourceStamp } from '@yardfall/calc';
import type { SurveyContent } from '@yardfall/contracts';

export interface Taken<T> {
  readonly content: T;
  readonly stamp: SourceStamp;
}

const day = 86_400;
const fiveMinutes = 300;

/** A document that was sent, under the limits of the company and not under its own. */
export function underLimits(value: unknown, limits: DesignDocument['limits']): unknown {
  const document = upgradeDocument(value);
  return typeof document === 'object' && document !== null ? { ...document, limits } : document;
}

/** The document that a design begins with: copies of the levels and the rain of the job with their stamps, the limits of the company, and no part. */
export function startDocument(title: string, survey: Taken<SurveyContent> | null, rain: Taken<RainTable>, limits: DesignDocument['limits'] = []): DesignDocument {
  const { table, ...storm } = rainOf(rain.content);
  return {
    schema: 'yardfall.design', version: 2, title, seed: 1,
    site: survey === null ? emptySite : siteOfSurvey(survey.content),
    rain: { table, allowance: 0, recorded: null, ...storm },
    system: { parts: [] },
    construction: {
      slabCuts: [], trenches: [], electrical: null, restoration: { sodArea: 0, paverArea: 0 }, treesNear: false, poolWithin3m: false, trenchNearFooting: false, foundationWithin1ft: false,
    },
    limits,
    sources: { survey: survey?.stamp ?? null, rain: rain.stamp },
  };
}

/** 25 years for the door and 100 to look beyond (the trade's default), or the nearest that the table holds. */
function rainOf(table: RainTable): Omit<DesignDocument['rain'], 'allowance' | 'recorded'> {
  const block = Math.max(fiveMinutes, table.durations[0] ?? fiveMinutes);
  const longest = Math.min(day, table.durations.at(-1) ?? day);
  return {
    table, storm: { method: 'alternatingBlock', duration: Math.floor(longest / block) * block, block },
    designReturnPeriod: nearest(table.returnPeriods, 25), checkReturnPeriod: nearest(table.returnPeriods, 100),
  };
}

function nearest(periods: readonly number[], wanted: number): number {
  return periods.reduce((best, period) => (Math.abs(period - wanted) < Math.abs(best - wanted) ? period : best), periods[0] ?? wanted);
}
