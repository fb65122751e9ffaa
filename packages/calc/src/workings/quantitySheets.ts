import { INCH } from '../common/constants.ts';
import type { Channel, DesignDocument, Part, SlabCut, Trench } from '../document/document.ts';
import { bagVolume, beddingDepth, filledVolume, swell, waste } from '../evaluate/quantities.ts';
import type { WorkingSymbol } from '../results/results.ts';
import { fieldOf, symbol } from './working.ts';

export interface QuantitySheet {
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  readonly value: number;
}

const stem = (code: string): string => code.split('.')[0] ?? code;
const wasteOf = (value: number): WorkingSymbol => symbol('k', 'waste', value, 'number');

function slabSheet(document: DesignDocument, code: string, cut: SlabCut, index: number): QuantitySheet[] {
  const path = `/construction/slabCuts/${index}`;
  const symbols = [
    symbol('L', 'length', cut.length, 'length', `${path}/length`), symbol('W', 'width', cut.width, 'length', `${path}/width`), symbol('t', 'thickness', cut.thickness, 'height', `${path}/thickness`),
  ];
  const volume = cut.length * cut.width * cut.thickness;
  const channel = document.system.parts.find((part): part is Channel => part.kind === 'channel' && part.id === cut.part);
  const body = channel === undefined ? 0 : Math.min(cut.length, channel.length) * channel.width * Math.min(cut.thickness, channel.depth);
  const back = [...symbols, symbol('V_b', 'channelBody', body, 'bulk', channel === undefined ? null : fieldOf(document, channel.id, 'width'))];
  const left = Math.max(0, volume - body);
  switch (code) {
    case 'sawCut': return [{ formula: '2*(L + W)*t/0.0254', symbols, value: (2 * (cut.length + cut.width) * cut.thickness) / INCH }];
    case 'slabBreak': return [{ formula: 'L*W*t', symbols, value: volume }];
    case 'slabReinforcement': return [{ formula: 'L*W', symbols: symbols.slice(0, 2), value: cut.length * cut.width }];
    case 'slabConcrete': return [{ formula: 'k*max(0, L*W*t - V_b)', symbols: [...back, wasteOf(waste.concrete)], value: left * waste.concrete }];
    case 'slabBag': return [bagSheet('max(0, L*W*t - V_b)', back, left)];
    case 'rubbleHaul': return [{ formula: 's*L*W*t', symbols: [...symbols, symbol('s', 'swell', swell.rubble, 'number')], value: volume * swell.rubble }];
    default: return [];
  }
}

/** Bags of 80 lb, a broken bag counted whole. */
function bagSheet(volume: string, symbols: readonly WorkingSymbol[], value: number): QuantitySheet {
  return {
    formula: `floor(k*(${volume})/v + 0.999999)`, symbols: [...symbols, wasteOf(waste.concrete), symbol('v', 'bagYield', bagVolume, 'bulk')],
    value: Math.floor((value * waste.concrete) / bagVolume + 0.999999),
  };
}

function trenchSheet(document: DesignDocument, code: string, dug: Trench, index: number): QuantitySheet[] {
  const path = `/construction/trenches/${index}`;
  const symbols = [
    symbol('L', 'length', dug.length, 'length', `${path}/length`), symbol('W', 'width', dug.width, 'length', `${path}/width`), symbol('h', 'trenchDepth', dug.depth, 'length', `${path}/depth`),
  ];
  const bank = dug.length * dug.width * dug.depth;
  const filled = filledVolume(document, dug);
  const fill = symbol('V_f', 'filledVolume', filled, 'bulk');
  switch (stem(code)) {
    case 'excavation': return [{ formula: 'L*W*h', symbols, value: bank }];
    case 'backfill': return [{ formula: 'L*W*h - V_f', symbols: [...symbols, fill], value: bank - filled }];
    case 'spoilHaul': return [{ formula: 's*V_f', symbols: [fill, symbol('s', 'swell', swell[dug.soil], 'number')], value: filled * swell[dug.soil] }];
    case 'bedding': return [{
      formula: 'k*L*W*h_b', symbols: [...symbols.slice(0, 2), symbol('h_b', 'beddingDepth', beddingDepth, 'height'), wasteOf(waste.stone)],
      value: dug.length * dug.width * beddingDepth * waste.stone,
    }];
    default: return [];
  }
}

const lengthCodes: Readonly<Record<string, number>> = { channel: 1, gutter: 1, swale: 1, pipe: waste.pipe, pressurePipe: waste.pipe, underdrain: waste.pipe };

function partSheet(document: DesignDocument, code: string, part: Part): QuantitySheet[] {
  const field = (name: string): string => fieldOf(document, part.id, name);
  const factor = lengthCodes[stem(code)];
  if (factor !== undefined && 'length' in part) {
    return [{ formula: 'k*L', symbols: [wasteOf(factor), symbol('L', 'length', part.length, 'length', field('length'))], value: part.length * factor }];
  }
  if (code === 'surroundBag' && part.kind === 'channel') return [surround(part, field)];
  if (code === 'collarBag' && part.kind === 'basin') {
    return [{
      formula: 'floor(V_c/v + 0.999)', symbols: [symbol('V_c', 'collarVolume', part.collarVolume, 'bulk', field('collarVolume')), symbol('v', 'bagYield', bagVolume, 'bulk')],
      value: Math.floor(part.collarVolume / bagVolume + 0.999),
    }];
  }
  if (code === 'pitStone' && part.kind === 'outlet' && part.pit !== null) {
    return [{
      formula: 'k*A*h', value: part.pit.area * part.pit.depth * waste.stone,
      symbols: [wasteOf(waste.stone), symbol('A', 'pitArea', part.pit.area, 'area', field('pit/area')), symbol('h', 'stoneDepth', part.pit.depth, 'height', field('pit/depth'))],
    }];
  }
  return [];
}

function surround(part: Channel, field: (name: string) => string): QuantitySheet {
  const around = (part.width + 2 * part.surround) * (part.depth + part.surround) - part.width * part.depth;
  return bagSheet('((B + 2*c)*(D + c) - B*D)*L', [
    symbol('B', 'channelWidth', part.width, 'diameter', field('width')), symbol('c', 'surround', part.surround, 'height', field('surround')),
    symbol('D', 'channelDepth', part.depth, 'height', field('depth')), symbol('L', 'length', part.length, 'length', field('length')),
  ], around * part.length);
}

function restoration(document: DesignDocument, code: string): QuantitySheet[] {
  const { sodArea, paverArea } = document.construction.restoration;
  if (code === 'sod') return [{ formula: 'k*A', symbols: [wasteOf(waste.sod), symbol('A', 'sodArea', sodArea, 'area', '/construction/restoration/sodArea')], value: sodArea * waste.sod }];
  if (code === 'pavers') return [{ formula: 'A', symbols: [symbol('A', 'paverArea', paverArea, 'area', '/construction/restoration/paverArea')], value: paverArea }];
  return [];
}

/** Every sheet that a quantity could come from: its cuts, its trenches, its part, or the restoration. */
export function quantitySheets(document: DesignDocument, code: string, partId: string | null): QuantitySheet[] {
  if (partId === null) return restoration(document, code);
  const { slabCuts, trenches } = document.construction;
  const part = document.system.parts.find((one) => one.id === partId);
  return [
    ...slabCuts.flatMap((cut, index) => (cut.part === partId ? slabSheet(document, code, cut, index) : [])),
    ...trenches.flatMap((dug, index) => (dug.part === partId ? trenchSheet(document, code, dug, index) : [])),
    ...(part === undefined ? [] : partSheet(document, code, part)),
  ];
}
