import type { DesignDocument, Part } from '@yardfall/calc';
import type { Extent, Point } from '../display.ts';
import { breaksFor, sheetWidth } from './breaks.ts';
import { candidateStation, showsCandidates } from './candidates.ts';
import { drawnX, noCuts } from './cuts.ts';
import type { StationMap } from './cuts.ts';
import { levelAt } from './ground.ts';
import type { Layout } from './layout.ts';
import type { PaperScale, SectionOptions } from './options.ts';

export interface Frame {
  readonly extent: Extent;
  readonly exaggeration: number;
  readonly map: StationMap;
  /** True stations beyond which nothing is drawn. */
  readonly from: number;
  readonly to: number;
  /** A whole long profile on a phone: only what decides is lettered. */
  readonly crowded: boolean;
  /** Metres per pixel, across and up. */
  readonly mx: number;
  readonly my: number;
}

/** Exaggerations that a reader can work with on a scale rule. */
const niceExaggerations = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100];

/** Height of the sheet for which breaks are chosen [px]. */
const sheetHeight = (width: number): number => (width < 1000 ? 320 : 460);

export function frameOf(document: DesignDocument, layout: Layout, ground: readonly Point[], options: SectionOptions): Frame {
  if (options.scale !== null) return onPaper(document, layout, ground, options, options.scale);
  const mini = options.detail === 'mini';
  const range = stationRange(document, layout, options);
  const narrow = options.width < 600;
  const left = mini ? 12 : narrow ? 44 : 116;
  const right = mini ? 8 : options.window === 'house' ? (narrow ? 112 : 150) : narrow ? 34 : 110;
  const levels = levelRange(document, layout, ground, options, range);
  const used = options.height - (mini ? 14 : narrow ? 96 : 120);
  // Heights are drawn at least half as large again as lengths, where the run is long enough.
  // Water comes and goes and must not move a break, and neither may the exact size of the screen.
  const dry = levelRange(document, layout, ground, { ...options, water: { pond: null, basin: null } }, range);
  const sheet = sheetWidth(options);
  const least = (1.5 * (dry.high - dry.low) * (sheet - left - right)) / (mini ? used : sheetHeight(sheet) - (narrow ? 96 : 120));
  const map = options.breaks ? breaksFor(document, layout, range, options, least) : noCuts;
  const across = drawnX(map, range.to) - drawnX(map, range.from);
  const mx = across / Math.max(options.width - left - right, 1);
  const start = drawnX(map, range.from) - left * mx;
  return fit(levels, { start, mx, used, range, map, mini }, options);
}

interface Fit {
  readonly start: number;
  readonly mx: number;
  readonly used: number;
  readonly range: { readonly from: number; readonly to: number };
  readonly map: StationMap;
  readonly mini: boolean;
}

function fit(levels: { low: number; high: number }, given: Fit, options: SectionOptions): Frame {
  const rise = Math.max(levels.high - levels.low, 0.1);
  const most = (given.mx * given.used) / rise;
  const exaggeration = niceExaggerations.filter((value) => value <= most).at(-1) ?? 1;
  // When even true scale is too tall the horizontal scale gives way, and the drawing keeps both axes true.
  const mx = exaggeration > most ? rise / given.used : given.mx;
  const my = mx / exaggeration;
  const spare = options.height * my - rise;
  const below = spare * (given.mini ? 0.5 : 0.52);
  const extent = {
    x0: given.start, x1: given.start + options.width * mx,
    y0: levels.low - below, y1: levels.low - below + options.height * my,
  };
  return { extent, exaggeration, map: given.map, from: given.range.from, to: given.range.to, mx, my, crowded: options.width < 600 && options.window === 'whole' };
}

/** Room beside the profile for lettering, and over and under its levels [px]. */
const paperRoom = { left: 116, right: 110, over: 48, under: 62 } as const;

/** Size that a profile takes on paper at a scale [px]. */
export function paperSize(profile: { readonly across: number; readonly rise: number }, scale: { readonly across: number; readonly up: number }): { width: number; height: number } {
  return { width: profile.across / scale.across + paperRoom.left + paperRoom.right, height: profile.rise / scale.up + paperRoom.over + paperRoom.under };
}

/** How long the profile is and how much it rises [m]. */
export function profileOf(document: DesignDocument, layout: Layout, ground: readonly Point[], options: SectionOptions): { across: number; rise: number; low: number; high: number } {
  const range = stationRange(document, layout, options);
  const { low, high } = levelRange(document, layout, ground, options, range);
  return { across: range.to - range.from, rise: Math.max(high - low, 0.1), low, high };
}

/** Both scales are given, and the whole profile lies at its true stations. */
function onPaper(document: DesignDocument, layout: Layout, ground: readonly Point[], options: SectionOptions, scale: PaperScale): Frame {
  const range = stationRange(document, layout, options);
  const levels = scale.levels ?? levelRange(document, layout, ground, options, range);
  const x0 = range.from - paperRoom.left * scale.across;
  const spare = options.height * scale.up - (levels.high - levels.low);
  const y0 = levels.low - (spare * paperRoom.under) / (paperRoom.under + paperRoom.over);
  const extent = { x0, x1: x0 + options.width * scale.across, y0, y1: y0 + options.height * scale.up };
  return { extent, exaggeration: scale.across / scale.up, map: noCuts, from: range.from, to: range.to, mx: scale.across, my: scale.up, crowded: false };
}

function stationRange(document: DesignDocument, layout: Layout, options: SectionOptions): { from: number; to: number } {
  const from = layout.sill === null ? Math.min(0, firstStation(document)) : 0;
  if (options.window === 'house') {
    const basin = layout.chain.find(({ part }) => part.kind === 'basin');
    const last = basin ?? layout.chain.find(({ part }) => part.kind === 'channel' || part.kind === 'catchBasin');
    if (last !== undefined) return { from, to: last.to + 0.5 };
  }
  const stations = showsCandidates(options) || layout.chain.length === 0 ? document.site.spotLevels.flatMap((spot) => (spot.station === null ? [] : [spot.station])) : [];
  const outlets = showsCandidates(options) ? document.site.candidateOutlets.map((outlet) => candidateStation(document, layout, outlet)) : [];
  const to = Math.max(from + 2, layout.end + (stations.length > 0 ? 0 : 1), ...stations, ...outlets);
  return { from, to };
}

function firstStation(document: DesignDocument): number {
  return Math.min(0, ...document.site.spotLevels.flatMap((spot) => (spot.station === null ? [] : [spot.station])));
}

function levelRange(
  document: DesignDocument, layout: Layout, ground: readonly Point[], options: SectionOptions, range: { from: number; to: number },
): { low: number; high: number } {
  const levels = ground.filter(([x]) => x >= range.from && x <= range.to).map(([, y]) => y);
  levels.push(levelAt(ground, range.from), levelAt(ground, range.to));
  if (layout.sill !== null) levels.push(layout.sill.level, layout.sill.level - 0.25);
  for (const placed of [...layout.chain, ...layout.joining, ...layout.beside]) if (placed.from <= range.to) levels.push(...partLevels(placed.part));
  if (showsCandidates(options)) for (const outlet of document.site.candidateOutlets) levels.push(outlet.level);
  if (options.detail === 'full' && options.utilities) {
    for (const { station, level } of document.site.utilities) if (station !== null && level !== null && station <= range.to) levels.push(level);
  }
  const { pond, basin } = options.water;
  const table = document.site.soil.seasonalHighWaterTable;
  if (pond !== null) levels.push(pond);
  if (basin !== null) levels.push(basin);
  if (table !== null) levels.push(table);
  return { low: Math.min(...levels), high: Math.max(...levels) };
}

export function partLevels(part: Part): number[] {
  switch (part.kind) {
    case 'channel':
      return [part.grateLevel, part.invertUp, part.invertDown - part.surround];
    case 'catchBasin':
      return [part.grateLevel, part.invertOut - part.sumpDepth];
    case 'pipe':
    case 'underdrain':
      return [part.invertUp, part.invertDown, part.invertUp + part.diameter];
    case 'basin':
      return [part.floorLevel, part.rimLevel, part.alarmLevel];
    case 'outlet':
      return [part.level, part.waterLevel, part.groundLevel, ...(part.pit === null ? [] : [part.pit.bottomLevel]), ...(part.dryWell === null ? [] : [part.dryWell.bottomLevel])];
    case 'dischargeLine':
      return part.highPoint === null ? [] : [part.highPoint];
    default:
      return [];
  }
}
