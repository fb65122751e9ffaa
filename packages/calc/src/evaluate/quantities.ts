import { INCH } from '../common/constants.ts';
import type { Channel, DesignDocument, Part, SlabCut, Trench } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import type { Quantity } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { quantityCodes, sizeNames } from './quantityCodes.ts';

/** Waste on top of the drawing: pipe 5 %, concrete, stone and sod 10 %. Source: common practice, the trade's ranges. */
export const waste = { pipe: 1.05, concrete: 1.1, stone: 1.1, sod: 1.1 } as const;
/** Loose volume over bank volume by soil, and of broken concrete. Source: common practice. */
export const swell = { sand: 1.12, loam: 1.25, clay: 1.35, rubble: 1.6 } as const;
/** Yield of an 80-lb bag: 0.60 ft3 [m3]. Source: bag label, common practice. */
export const bagVolume = 0.6 * 0.3048 * 0.3048 * 0.3048;
/** Stone under and beside a pipe: 4 in over the width of the trench. Source: common practice. */
export const beddingDepth = 4 * INCH;

type Origin = Quantity['origin'];

function item(code: string, part: string | null, amount: number, origin: Origin = 'drawing'): Quantity[] {
  const unit = quantityCodes[code];
  return unit === undefined || !(amount > 0) ? [] : [{ code, part, amount, unit, origin }];
}

/** Nominal size by the nearest name within an eighth of an inch. */
function sizeCode(stem: string, sizes: readonly string[], size: number): string {
  const inches = size / INCH;
  return `${stem}.${sizes.find((name) => Math.abs(Number(name) - inches) <= 0.125) ?? 'other'}`;
}

const bags = (volume: number): number => Math.floor((volume * waste.concrete) / bagVolume + 0.999999);

/** Saw cut: two sides and two ends, by depth; what is broken out and what is poured back. */
function slab(cut: SlabCut, channel: Channel | undefined): Quantity[] {
  const volume = cut.length * cut.width * cut.thickness;
  const body = channel === undefined ? 0 : Math.min(cut.length, channel.length) * channel.width * Math.min(cut.thickness, channel.depth);
  const back = Math.max(0, volume - body);
  return [
    ...item('sawCut', cut.part, 2 * (cut.length + cut.width) * (cut.thickness / INCH)), ...item('slabBreak', cut.part, volume),
    ...item('slabReinforcement', cut.part, cut.reinforcement === 'none' ? 0 : cut.length * cut.width), ...item('slabConcrete', cut.part, back * waste.concrete),
    ...item('slabBag', cut.part, bags(back)), ...item('rubbleHaul', cut.part, volume * swell.rubble),
  ];
}

/** What stands in a trench and does not go back as soil [m3]. */
export function filledVolume(document: DesignDocument, trench: Trench): number {
  const part = document.system.parts.find((one) => one.id === trench.part);
  const bank = trench.length * trench.width * trench.depth;
  if (part?.kind === 'basin') return Math.min(bank, (PI / 4) * part.diameter * part.diameter * (part.rimLevel - part.floorLevel) + part.collarVolume);
  if (part?.kind === 'outlet') return Math.min(bank, part.pit === null ? 0 : part.pit.area * part.pit.depth);
  if (part?.kind === 'pipe' || part?.kind === 'roofLine') return Math.min(bank, trench.length * ((PI / 4) * part.diameter * part.diameter + trench.width * beddingDepth));
  return 0;
}

function trench(document: DesignDocument, dug: Trench): Quantity[] {
  const bank = dug.length * dug.width * dug.depth;
  const filled = filledVolume(document, dug);
  const part = document.system.parts.find((one) => one.id === dug.part);
  const bedding = part?.kind === 'pipe' || part?.kind === 'basin' ? dug.length * dug.width * beddingDepth * waste.stone : 0;
  return [
    ...item(`excavation.${dug.soil}`, dug.part, bank), ...item('backfill', dug.part, bank - filled), ...item('spoilHaul', dug.part, filled * swell[dug.soil]),
    ...item('bedding', dug.part, bedding),
  ];
}

function channel(part: Channel): Quantity[] {
  const around = (part.width + 2 * part.surround) * (part.depth + part.surround) - part.width * part.depth;
  return [
    ...item(sizeCode('channel', sizeNames.channel, part.width), part.id, part.length), ...item('channelEnd', part.id, 2), ...item('channelOutlet', part.id, 1),
    ...item('surroundBag', part.id, bags(around * part.length)),
  ];
}

function ofPart(part: Part): Quantity[] {
  switch (part.kind) {
    case 'channel': return channel(part);
    case 'pipe': return [
      ...item(sizeCode('pipe', sizeNames.pipe, part.diameter), part.id, part.length * waste.pipe),
      ...item(sizeCode('pipeBend', sizeNames.pipe, part.diameter), part.id, part.bends90 + part.bends45), ...item('cleanout', part.id, part.cleanouts),
    ];
    case 'roofLine': return [
      ...item(sizeCode('pipe', sizeNames.pipe, part.diameter), part.id, part.length * waste.pipe),
      ...item(sizeCode('pipeBend', sizeNames.pipe, part.diameter), part.id, part.bends90 + part.bends45), ...item('cleanout', part.id, 1),
    ];
    case 'gutter': return item(sizeCode('gutter', sizeNames.gutter, part.width), part.id, part.length);
    case 'leader': return item(sizeCode('leader', sizeNames.leader, part.diameter), part.id, part.count);
    case 'catchBasin': return item('catchBasin', part.id, 1);
    case 'cleanout': return item('cleanout', part.id, 1);
    case 'underdrain': return item('underdrain', part.id, part.length * waste.pipe);
    case 'swale': return item('swale', part.id, part.length);
    case 'basin': return [
      ...item(sizeCode('basin', sizeNames.basin, part.diameter), part.id, 1),
      ...item('collarBag', part.id, Math.floor(part.collarVolume / bagVolume + 0.999)),
    ];
    case 'pump': return [...item('pump', part.id, 1), ...item('union', part.id, 1)];
    case 'checkValve': return item('checkValve', part.id, part.present ? 1 : 0);
    case 'weepHole': return item('weepHole', part.id, 1);
    case 'dischargeLine': return [
      ...item(lineCode(part.nominal), part.id, part.length * waste.pipe),
      ...item('pressureFitting', part.id, part.fittings.reduce((sum, fitting) => sum + fitting.count, 0)),
    ];
    case 'outlet': return [
      ...item(`outlet.${part.outletKind}`, part.id, 1), ...item('pitStone', part.id, part.pit === null ? 0 : part.pit.area * part.pit.depth * waste.stone),
    ];
  }
}

/** A line's nominal name is text: "1 1/2 in". */
function lineCode(nominal: string): string {
  const name = nominal.replace(/\s*(in|")\.?\s*$/, '').trim().replace(' ', '-');
  return `pressurePipe.${(sizeNames.line as readonly string[]).includes(name) ? name : 'other'}`;
}

/** What goes with every job, whatever its drawing. */
function allowances(document: DesignDocument): Quantity[] {
  const pumped = partsOf(document, 'pump').length > 0;
  const { electrical } = document.construction;
  return [
    ...item('mobilization', null, 1, 'allowance'), ...item('siteProtection', null, 1, 'allowance'), ...item('locateTicket', null, 1, 'allowance'),
    ...item('permit', null, 1, 'allowance'), ...item('electrician', null, pumped ? 1 : 0, 'allowance'),
    ...item('alarm', null, pumped && electrical?.alarm !== 'none' ? 1 : 0, 'allowance'),
    ...item('backup', null, electrical !== null && electrical.backup !== 'none' ? 1 : 0, 'allowance'),
    ...item('commissioning', null, 1, 'allowance'), ...item('asBuilt', null, 1, 'allowance'), ...item('handover', null, 1, 'allowance'),
  ];
}

/** Quantities of a design from its geometry, waste counted; none for a site without a system. */
export function quantities(document: DesignDocument): Quantity[] {
  if (document.system.parts.length === 0) return [];
  const { construction } = document;
  const channels = partsOf(document, 'channel');
  return [
    ...construction.slabCuts.flatMap((cut) => slab(cut, channels.find((one) => one.id === cut.part))),
    ...construction.trenches.flatMap((dug) => trench(document, dug)),
    ...document.system.parts.flatMap(ofPart),
    ...item('sod', null, construction.restoration.sodArea * waste.sod), ...item('pavers', null, construction.restoration.paverArea),
    ...allowances(document),
  ];
}
