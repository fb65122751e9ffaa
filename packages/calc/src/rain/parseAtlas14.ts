import { HOUR, INCH } from '../common/constants.ts';
import { at } from '../common/require.ts';
import type { RainTable } from '../document/document.ts';
import { atlasSections } from './atlasSection.ts';
import type { AtlasSection } from './atlasSection.ts';
import { atlasLines, atlasProblem, decodeAtlas } from './atlasText.ts';
import type { Line } from './atlasText.ts';

export interface AtlasWarning {
  readonly code: 'rain.atlas.durationsDropped' | 'rain.atlas.coarseIntensity';
  readonly params: Readonly<Record<string, number | string>>;
}

export interface AtlasFile {
  readonly table: RainTable;
  readonly place: { readonly name: string; readonly station: string; readonly latitude: number | null; readonly longitude: number | null };
  readonly measure: 'depth' | 'intensity';
  readonly warnings: readonly AtlasWarning[];
}

type Depths = readonly (readonly number[])[];

/** Half a unit in the last place is a tenth of the value or more: whole millimeters an hour below five. */
const COARSE_INTENSITY = 5;

function unitsOf(lines: readonly Line[]): { millimeters: number; measure: 'depth' | 'intensity'; metric: boolean } {
  const title = lines.find((line) => line.cells.some((cell) => /precipitation frequency estimates \(/i.test(cell.text)));
  const unit = /\(\s*(inches|millimeters)\s*(\/\s*hour|per hour)?\s*\)/i.exec(title?.cells.map((cell) => cell.text).join(' ') ?? '');
  if (title === undefined || unit === null) throw atlasProblem('noUnits', title?.number ?? 1, 1);
  const metric = unit[1]?.toLowerCase() === 'millimeters';
  return { millimeters: metric ? 1 : INCH * 1000, measure: unit[2] === undefined ? 'depth' : 'intensity', metric };
}

function fieldOf(lines: readonly Line[], label: RegExp): string {
  for (const line of lines) {
    const text = line.cells.map((cell) => cell.text).join(', ');
    if (label.test(text)) return text.replace(label, '').trim();
  }
  return '';
}

function degreesOf(text: string): number | null {
  const match = /^-?\d+(\.\d+)?/.exec(text);
  return match === null ? null : Number(match[0]);
}

function refuseOtherAnswers(lines: readonly Line[]): void {
  for (const line of lines) {
    const text = line.cells.map((cell) => cell.text).join(',');
    if (/result\s*=\s*'none'|not within a project area/i.test(text)) throw atlasProblem('outsideCoverage', line.number, 1);
    if (/<\s*(!doctype|html)/i.test(text)) throw atlasProblem('webPage', line.number, 1);
  }
  if (!lines.some((line) => line.cells.some((cell) => /^by duration for/i.test(cell.text)))) throw atlasProblem('notAtlas', 1, 1);
}

/** Rounded intensities of long durations fall to nothing, or make a longer rain shallower: the table ends before. */
function usableRows(section: AtlasSection, depths: Depths, measure: 'depth' | 'intensity'): number {
  for (let r = 0; r < depths.length; r += 1) {
    const row = at(depths, r);
    for (let c = 0; c < row.length; c += 1) {
      const depth = at(row, c);
      const shallower = r > 0 && depth < at(at(depths, r - 1), c);
      if (depth > 0 && !shallower) continue;
      if (measure === 'intensity') return r;
      const line = at(section.rows, r);
      throw atlasProblem(depth > 0 ? 'longerIsShallower' : 'zeroDepth', line.number, line.cells[c + 1]?.column ?? 1, { value: depth });
    }
  }
  return depths.length;
}

function toDepths(section: AtlasSection, millimeters: number, measure: 'depth' | 'intensity'): Depths {
  return section.values.map((row, r) => row.map((value) => value * millimeters * (measure === 'depth' ? 1 : at(section.durations, r) / HOUR)));
}

function checkLimits(mean: AtlasSection, limit: AtlasSection): void {
  const line = at(limit.rows, 0);
  const same = mean.periods.length === limit.periods.length && mean.durations.length === limit.durations.length
    && mean.durations.every((d, i) => d === limit.durations[i]) && mean.periods.every((p, i) => p === limit.periods[i]);
  if (!same) throw atlasProblem('limitsShape', line.number, 1, { kind: limit.kind });
  limit.values.forEach((row, r) => row.forEach((value, c) => {
    const middle = at(at(mean.values, r), c);
    if (limit.kind === 'upper' ? value >= middle : value <= middle) return;
    const where = at(limit.rows, r);
    throw atlasProblem('limitsCross', where.number, where.cells[c + 1]?.column ?? 1, { kind: limit.kind, value, middle });
  }));
}

function warningsOf(mean: AtlasSection, rows: number, units: { measure: string; metric: boolean }): AtlasWarning[] {
  const warnings: AtlasWarning[] = [];
  if (rows < mean.durations.length) {
    warnings.push({ code: 'rain.atlas.durationsDropped', params: { from: at(mean.durations, rows), kept: rows, of: mean.durations.length } });
  }
  const coarse = mean.values.slice(0, rows).findIndex((row) => row.some((value) => value < COARSE_INTENSITY));
  if (units.measure === 'intensity' && units.metric && coarse >= 0) {
    warnings.push({ code: 'rain.atlas.coarseIntensity', params: { from: at(mean.durations, coarse) } });
  }
  return warnings;
}

/**
 * Rain table from the CSV that the NOAA Atlas 14 server gives for a point.
 *
 * Reads inches or millimeters, depth or intensity, partial-duration or annual-maximum series, the mean
 * with or without its 90 % limits, UTF-8 or ISO-8859-1, and a file that a spreadsheet saved again.
 *
 * @param file text or bytes of the file
 * @returns depths [mm], place, and what had to be left out
 * Limits: throws rain.atlas.* with `line` and `column` for anything it cannot read whole
 * Source: NOAA National Weather Service, Precipitation Frequency Data Server, point files
 * Checked against: fixtures/rain/pulaskiDepthInches.csv, fixtures/rain/annArborDepthInchesLimits.csv, fixtures/rain/pointIntensityMetric.csv, every printed number
 */
export function parseAtlas14(file: string | Uint8Array): AtlasFile {
  const lines = atlasLines(typeof file === 'string' ? file : decodeAtlas(file));
  refuseOtherAnswers(lines);
  const units = unitsOf(lines);
  const sections = atlasSections(lines);
  const mean = sections.find((section) => section.kind === 'mean');
  if (mean === undefined) throw atlasProblem('noMean', 1, 1);
  for (const kind of ['mean', 'upper', 'lower'] as const) {
    const twice = sections.filter((section) => section.kind === kind)[1];
    if (twice !== undefined) throw atlasProblem('sectionTwice', at(twice.rows, 0).number, 1, { kind });
  }
  const depths = toDepths(mean, units.millimeters, units.measure);
  const rows = usableRows(mean, depths, units.measure);
  if (rows < 2) throw atlasProblem('tooFewDurations', at(mean.rows, 0).number, 1, { found: rows });
  const limit = (kind: 'upper' | 'lower'): Depths | null => {
    const section = sections.find((s) => s.kind === kind);
    if (section === undefined) return null;
    checkLimits(mean, section);
    return toDepths(section, units.millimeters, units.measure).slice(0, rows);
  };
  const place = {
    name: fieldOf(lines, /^Location name \([^)]*\):|^Location name:/i), station: fieldOf(lines, /^Station Name:/i),
    latitude: degreesOf(fieldOf(lines, /^Latitude:/i)), longitude: degreesOf(fieldOf(lines, /^Longitude:/i)),
  };
  const table: RainTable = {
    name: place.name, source: fieldOf(lines, /^(?=NOAA Atlas 14)/i), illustrative: false, series: mean.series,
    durations: mean.durations.slice(0, rows), returnPeriods: mean.periods, depths: depths.slice(0, rows), lower: limit('lower'), upper: limit('upper'),
  };
  return { table, place, measure: units.measure, warnings: warningsOf(mean, rows, units) };
}
