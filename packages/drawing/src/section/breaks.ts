import type { DesignDocument } from '@yardfall/calc';
import { drawnX } from './cuts.ts';
import type { Cut, StationMap } from './cuts.ts';
import { candidateStation, showsCandidates } from './candidates.ts';
import type { Layout } from './layout.ts';
import type { SectionOptions } from './options.ts';

interface Range {
  readonly from: number;
  readonly to: number;
}

/** A break must save this share of what is still drawn, or it is not worth its mark. */
const worthwhile = 0.12;
/** Drawn width of a break [px]. */
const gapWidth = 12;

/**
 * As few breaks as give the house end room: the longest stretches in which nothing stands, and distances true on both sides.
 * What is left is never shorter than `least`, so that heights need not be drawn smaller than lengths.
 */
export function breaksFor(document: DesignDocument, layout: Layout, range: Range, given: SectionOptions, least: number): StationMap {
  const options = { ...given, width: sheetWidth(given) };
  const features = featuresOf(document, layout, range, options);
  const most = mostBreaks(options);
  const across = range.to - range.from;
  const scaleOf = (cuts: readonly Cut[]): number => (across - cuts.reduce((sum, cut) => sum + cut.to - cut.from, 0)) / options.width;
  // The room beside a break is wanted in pixels, and the scale depends on the breaks: the closest scale gives the room.
  const basin = layout.chain.find(({ part }) => part.kind === 'basin');
  const wish = { across, most, least, near: basin?.to ?? layout.chain[0]?.to ?? layout.lowSpot?.station ?? 0 };
  const closest = scaleOf(longest(features, { before: 0, after: 0, ...wish }));
  const cuts = longest(features, { before: roomBefore(options) * closest, after: roomAfter(options) * closest, ...wish });
  const whole = cuts.map((cut) => wholeUnits(cut, unitOf[options.scaleUnit])).filter(({ from, to }) => to > from);
  return { cuts: whole, gap: gapWidth * scaleOf(whole) };
}

/** Breaks are chosen for one of three sheets, so that two drawings of one job leave out the same stretch. */
export function sheetWidth({ detail, width }: Pick<SectionOptions, 'detail' | 'width'>): number {
  if (detail === 'mini') return width;
  return width < 600 ? 390 : width < 1000 ? 800 : 1376;
}

const unitOf = { foot: 0.3048, metre: 1 } as const;

/** A break leaves out whole feet or metres, about its middle. */
function wholeUnits({ from, to }: Cut, unit: number): Cut {
  const length = Math.floor((to - from) / unit + 1e-9) * unit;
  const spare = (to - from - length) / 2;
  return { from: from + spare, to: from + spare + length };
}

/** Utilities divide the long run. */
function mostBreaks({ detail, utilities }: SectionOptions): number {
  if (detail === 'mini' || !utilities) return 1;
  return 2;
}

/** Levels are lettered to the right of a part, so more is kept there. */
const roomBefore = ({ detail, width }: SectionOptions): number => (detail === 'mini' ? 14 : width < 600 ? 34 : width < 1000 ? 84 : 116);
const roomAfter = ({ detail, width }: SectionOptions): number => (detail === 'mini' ? 10 : width < 600 ? 20 : width < 1000 ? 36 : 56);

interface Wish {
  readonly before: number;
  readonly after: number;
  readonly across: number;
  readonly most: number;
  readonly least: number;
  /** Nothing nearer than this station is left out. */
  readonly near: number;
}

function longest(features: readonly number[], { before, after, across, most, least, near }: Wish): Cut[] {
  const open = features.slice(1).map((station, index): Cut => ({ from: (features[index] ?? station) + before, to: station - after }));
  // The house end is read most closely and is never broken.
  const beyond = open.filter(({ from }) => from >= near);
  beyond.sort((a, b) => b.to - b.from - (a.to - a.from) || a.from - b.from);
  const cuts: Cut[] = [];
  let left = across;
  for (const { from, to } of beyond) {
    const length = Math.min(to - from, left - least);
    if (cuts.length === most || length < left * worthwhile) break;
    const spare = (to - from - length) / 2;
    cuts.push({ from: from + spare, to: to - spare });
    left -= length;
  }
  return cuts.sort((a, b) => a.from - b.from);
}

/** Stations at which something stands. */
function featuresOf(document: DesignDocument, layout: Layout, range: Range, options: SectionOptions): number[] {
  const stations = [range.from, range.to, layout.lowSpot?.station ?? range.from];
  for (const { part, from, to } of [...layout.chain, ...layout.roof, ...layout.beside]) stations.push(from, part.kind === 'dischargeLine' ? from : to);
  if (showsCandidates(options)) for (const outlet of document.site.candidateOutlets) stations.push(candidateStation(document, layout, outlet));
  if (options.utilities && options.detail === 'full') {
    for (const { station, level } of document.site.utilities) if (station !== null && level !== null) stations.push(station);
  }
  return [...new Set(stations)].filter((x) => x >= range.from && x <= range.to).sort((a, b) => a - b);
}

/** The station nearest to the wanted one, between two others, that is drawn; the wanted one where none is. */
export function seenStation(map: StationMap, wanted: number, from: number, to: number): number {
  const cut = map.cuts.find((entry) => wanted > entry.from && wanted < entry.to);
  if (cut === undefined) return wanted;
  const ends = [cut.from, cut.to].filter((end) => end >= from && end <= to);
  return ends.sort((a, b) => Math.abs(a - wanted) - Math.abs(b - wanted))[0] ?? wanted;
}

export const drawnMiddle = (map: StationMap, cut: Cut): number => (drawnX(map, cut.from) + drawnX(map, cut.to)) / 2;
