import type { Quantity } from '../results/results.ts';

type Unit = Quantity['unit'];

const sized = <const S extends readonly string[]>(stem: string, sizes: S, unit: Unit): Record<string, Unit> =>
  Object.fromEntries([...sizes, 'other'].map((size) => [`${stem}.${size}`, unit]));

/** Nominal sizes in inches that a price list names; anything else is "other". */
export const sizeNames = {
  channel: ['4', '5', '6', '8'],
  pipe: ['3', '4', '6', '8'],
  line: ['1-1/4', '1-1/2', '2', '3'],
  basin: ['18', '24', '30', '36'],
  gutter: ['5', '6'],
  leader: ['2', '3', '4'],
} as const;

/**
 * Every quantity code that an evaluation can give, with its unit. A price list names costs by these codes.
 * Lengths of saw cut are counted by their depth: metres times inches.
 */
export const quantityCodes: Readonly<Record<string, Unit>> = {
  mobilization: 'each', siteProtection: 'each', locateTicket: 'each', permit: 'each',
  sawCut: 'cutMetreInch', slabBreak: 'm3', slabReinforcement: 'm2', slabConcrete: 'm3', slabBag: 'bag80', surroundBag: 'bag80', collarBag: 'bag80',
  'excavation.sand': 'm3', 'excavation.loam': 'm3', 'excavation.clay': 'm3', spoilHaul: 'm3', rubbleHaul: 'm3', backfill: 'm3', bedding: 'm3', pitStone: 'm3',
  ...sized('channel', sizeNames.channel, 'm'), channelEnd: 'each', channelOutlet: 'each',
  ...sized('pipe', sizeNames.pipe, 'm'), ...sized('pipeBend', sizeNames.pipe, 'each'), cleanout: 'each', catchBasin: 'each', underdrain: 'm', swale: 'm',
  ...sized('gutter', sizeNames.gutter, 'm'), ...sized('leader', sizeNames.leader, 'each'),
  ...sized('basin', sizeNames.basin, 'each'), pump: 'each', checkValve: 'each', union: 'each', weepHole: 'each',
  ...sized('pressurePipe', sizeNames.line, 'm'), pressureFitting: 'each',
  'outlet.emitter': 'each', 'outlet.percolationTee': 'each', 'outlet.daylight': 'each', 'outlet.dryWell': 'each', 'outlet.curb': 'each',
  'outlet.stormConnection': 'each', 'outlet.ditch': 'each',
  electrician: 'each', alarm: 'each', backup: 'each', sod: 'm2', pavers: 'm2', commissioning: 'each', asBuilt: 'each', handover: 'each',
};
