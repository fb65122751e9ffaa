import type { DesignDocument } from '@yardfall/calc';
import type { DisplayList, Item, KeyEntry, LineItem, Point, PolygonItem, TextItem } from '../display.ts';
import { label } from '../labels.ts';
import { paperSize, profileOf } from '../section/frame.ts';
import { groundLine } from '../section/ground.ts';
import { layOut } from '../section/layout.ts';
import { defaultSectionOptions } from '../section/options.ts';
import { section } from '../section.ts';
import type { DrawingTable } from '../table.ts';
import { sectionDifferences } from './differences.ts';
import type { SectionDifference } from './differences.ts';

export interface Compared {
  readonly before: DesignDocument;
  readonly after: DesignDocument;
}

interface Scale {
  readonly across: number;
  readonly up: number;
}

export interface OverlayOptions {
  readonly width: number;
  readonly height: number;
  /** Metres of one pixel; null fills the picture. */
  readonly scale: Scale | null;
  /** Two revisions, each difference by name; or the design and what was built, by their lines alone. */
  readonly of?: 'revisions' | 'built';
}

const plain = { ...defaultSectionOptions, gravity: false } as const;
const niceExaggerations = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20];

/** One frame for both: the longer run, and every level of either. */
export function overlayProfile({ before, after }: Compared): { across: number; rise: number; low: number; high: number } {
  const both = [before, after].map((document) => {
    const layout = layOut(document);
    return profileOf(document, layout, groundLine(document, layout), plain);
  });
  const [low, high] = [Math.min(...both.map((one) => one.low)), Math.max(...both.map((one) => one.high))];
  return { across: Math.max(...both.map((one) => one.across)), rise: Math.max(high - low, 0.1), low, high };
}

/** Two sections in one frame: the earlier thin and dashed, the later bold where it differs, each difference by name at its part. */
export function overlay(compared: Compared, { width, height, scale, of = 'revisions' }: OverlayOptions): DisplayList {
  const profile = overlayProfile(compared);
  const used = scale ?? filling(profile, width, height);
  const draw = (document: DesignDocument): DisplayList => section(document, null, { width, height, scale: { ...used, levels: profile }, gravity: false });
  const [old, now] = [draw(compared.before), draw(compared.after)];
  const differences = sectionDifferences(compared.before, compared.after);
  const differing = new Set(differences.map(({ id }) => id));
  const x0 = Math.min(old.extent.x0, now.extent.x0);
  const extent = { ...now.extent, x0, x1: x0 + width * used.across };
  const items = [
    ...now.items.flatMap((item) => fillOf(item)),
    ...old.items.flatMap((item) => outlineOf(item)).map((item): LineItem => ({ ...item, role: 'ink', weight: 'thin', dash: 'dash' })),
    ...now.items.flatMap((item) => outlineOf(item)).map((item): LineItem => ({ ...item, weight: item.part !== null && differing.has(item.part) ? 'bold' : item.weight === 'bold' ? 'normal' : item.weight })),
    ...(of === 'built' ? [] : [...now.items.filter((item) => isLevel(item, differing)), ...differences.flatMap((difference) => wordsFor(difference, old, now))]),
  ];
  return { name: 'section', extent, exaggeration: used.across / used.up, breaks: [], items, key: keyOf(of), hits: [], handles: [] };
}

const keyOf = (of: 'revisions' | 'built'): readonly KeyEntry[] => [
  { label: label(of === 'built' ? 'drawing.key.asDesigned' : 'drawing.key.before'), symbol: { kind: 'line', role: 'ink', weight: 'thin', dash: 'dash' } },
  { label: label(of === 'built' ? 'drawing.key.asBuilt' : 'drawing.key.after'), symbol: { kind: 'line', role: 'ink', weight: 'bold', dash: 'solid' } },
  { label: label('drawing.key.both'), symbol: { kind: 'line', role: 'ink', weight: 'normal', dash: 'solid' } },
];

function filling(profile: { across: number; rise: number }, width: number, height: number): Scale {
  const bare = paperSize({ across: 0, rise: 0 }, { across: 1, up: 1 });
  const across = profile.across / (width - bare.width);
  const most = (across * (height - bare.height)) / profile.rise;
  const times = niceExaggerations.filter((value) => value <= most).at(-1) ?? 1;
  // Where even true scale is too tall, lengths give way as well.
  return times <= most ? { across, up: across / times } : { across: profile.rise / (height - bare.height), up: profile.rise / (height - bare.height) };
}

const soil = new Set(['soil', 'concrete']);

/** Ground and slab of the later one, as they are; a part is shown by its outline alone, so that both can be seen. */
const fillOf = (item: Item): PolygonItem[] => (item.kind === 'polygon' && item.part === null && soil.has(item.hatch) ? [{ ...item, outlined: false }] : []);

function outlineOf(item: Item): LineItem[] {
  if (item.kind === 'line') return item.weight === 'hair' || isLeader(item) ? [] : [item];
  if (item.kind !== 'polygon' || !item.outlined || item.points.length < 2) return [];
  return [{ kind: 'line', part: item.part, role: item.role, state: 'plain', points: [...item.points, ...item.points.slice(0, 1)], weight: 'normal', dash: 'solid', of: null }];
}

const isLeader = ({ of }: LineItem): boolean => of !== undefined && of !== null;

/** Levels of what differs are lettered as they are in the later one. */
const isLevel = (item: Item, differing: ReadonlySet<string>): boolean =>
  (item.kind === 'text' || (item.kind === 'mark' && item.mark === 'levelMark')) && item.part !== null && differing.has(item.part);

function wordsFor({ id, at: shownAt, name, change }: SectionDifference, old: DisplayList, now: DisplayList): TextItem[] {
  const at = placeOf(shownAt, change === 'removed' ? old : now);
  if (at === null) return [];
  return [{ kind: 'text', part: id, role: 'ink', state: 'plain', at, label: label(`drawing.${change}`, { name }), side: 'above', rank: 0.5, movable: true }];
}

/** Where the name of a part stands: the middle of the first thing that is drawn of it. */
function placeOf(id: string, { items }: DisplayList): Point | null {
  const own = items.filter((item) => item.part === id);
  const drawn = own.find((item) => item.kind === 'polygon' || item.kind === 'line') ?? own[0];
  if (drawn === undefined) return null;
  if (drawn.kind === 'text' || drawn.kind === 'mark') return drawn.at;
  const xs = drawn.points.map(([x]) => x);
  const ys = drawn.points.map(([, y]) => y);
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}

/** What was lettered at each part that differs, then and now. */
export function overlayTable({ before, after }: Compared): DrawingTable {
  const lettered = (document: DesignDocument): TextItem[] => section(document, null, { breaks: false, gravity: false }).items.filter((item) => item.kind === 'text');
  const [old, now] = [lettered(before), lettered(after)];
  const none = label('drawing.value.none');
  const rows = sectionDifferences(before, after).flatMap(({ id, name, change }) => {
    const was = old.filter(({ part }) => part === id).map((item) => item.label);
    const is = now.filter(({ part }) => part === id).map((item) => item.label);
    const unlike = (list: readonly TextItem['label'][]) => (one: TextItem['label']): boolean => !list.some((other) => JSON.stringify(other) === JSON.stringify(one));
    const [gone, come] = [was.filter(unlike(is)), is.filter(unlike(was))];
    const pairs = Array.from({ length: Math.max(gone.length, come.length) }, (_, at) => [gone[at] ?? none, come[at] ?? none] as const);
    if (pairs.length === 0) return [[label(`drawing.${change}`, { name }), none, none]];
    return pairs.map(([left, right]) => [label('drawing.value.name', { value: name }), left, right]);
  });
  return { caption: label('drawing.sheet.differences'), columns: [label('drawing.table.part'), label('drawing.table.before'), label('drawing.table.after')], rows };
}
