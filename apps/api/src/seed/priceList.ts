import type { BodyOf, PriceLineInput, prices as api } from '@yardfall/contracts';

type Item = BodyOf<typeof api.saveItem>;
type Row = readonly [code: string, name: string, kind: Item['kind'], unit: Item['unit'], dollars: number, hours: number];

/** Unit costs are invented; hours follow the trade's production rates (common practice and ours). */
const rows: readonly Row[] = [
  ['mobilization', 'Truck, trailer and set-up', 'equipment', 'lump', 120, 2], ['siteProtection', 'Plywood, silt sock, door dam', 'material', 'lump', 35, 1], ['locateTicket', 'Locate ticket', 'permit', 'each', 0, 0.5],
  ['permit', 'Plumbing permit', 'permit', 'each', 85, 0.5], ['sawCut', 'Wet saw, by inch of depth', 'equipment', 'inchFoot', 0.6, 0.018], ['slabBreak', 'Break and load slab', 'equipment', 'ft3', 2, 0.125],
  ['slabReinforcement', 'Cut mesh or bar', 'equipment', 'ft2', 0.2, 0.03], ['slabConcrete', 'Slab concrete, priced by the bag', 'material', 'yd3', 0, 0], ['slabBag', 'Concrete bag, slab', 'material', 'bag', 6.5, 0.17],
  ['surroundBag', 'Concrete bag, channel surround', 'material', 'bag', 6.5, 0.12], ['collarBag', 'Concrete bag, anti-float collar', 'material', 'bag', 6.5, 0.07],
  ['excavation.sand', 'Hand trench, sand', 'labour', 'yd3', 0, 0.92], ['excavation.loam', 'Hand trench, loam', 'labour', 'yd3', 0, 1.3], ['excavation.clay', 'Hand trench, clay', 'labour', 'yd3', 0, 2.5],
  ['spoilHaul', 'Spoil, loose', 'disposal', 'yd3', 24, 0.3], ['rubbleHaul', 'Broken concrete', 'disposal', 'yd3', 45, 0.5], ['backfill', 'Backfill in lifts', 'labour', 'yd3', 0, 0.6],
  ['bedding', 'Washed stone, bedding', 'material', 'yd3', 62, 0.5], ['pitStone', 'Washed stone, pit', 'material', 'yd3', 62, 0.5],
  ['channel.4', 'Channel 4 in with grate', 'material', 'ft', 32, 0.28], ['channel.5', 'Channel 5 in with heavy grate', 'material', 'ft', 46, 0.32], ['channel.6', 'Channel 6 in with heavy grate', 'material', 'ft', 58, 0.34],
  ['channel.8', 'Channel 8 in with heavy grate', 'material', 'ft', 79, 0.38], ['channelEnd', 'Channel end cap', 'material', 'each', 12, 0.1], ['channelOutlet', 'Channel outlet', 'material', 'each', 46, 0.25],
  ['pipe.3', '3 in smooth pipe', 'material', 'ft', 2.1, 0.04], ['pipe.4', '4 in smooth pipe', 'material', 'ft', 2.6, 0.045], ['pipe.6', '6 in smooth pipe', 'material', 'ft', 5.4, 0.06], ['pipe.8', '8 in smooth pipe', 'material', 'ft', 9.8, 0.08],
  ['pipeBend.3', '3 in sweep or 45', 'material', 'each', 11, 0.15], ['pipeBend.4', '4 in sweep or 45', 'material', 'each', 16, 0.15], ['pipeBend.6', '6 in sweep or 45', 'material', 'each', 34, 0.2], ['pipeBend.8', '8 in sweep or 45', 'material', 'each', 71, 0.25],
  ['cleanout', 'Cleanout to grade', 'material', 'each', 38, 0.3], ['catchBasin', 'Catch basin with grate', 'material', 'each', 96, 1.2], ['underdrain', 'Perforated pipe in stone and fabric', 'material', 'ft', 6.2, 0.12], ['swale', 'Swale, cut and shaped', 'labour', 'ft', 0, 0.12],
  ['gutter.5', '5 in gutter, hung', 'subcontract', 'ft', 7, 0], ['gutter.6', '6 in gutter, hung', 'subcontract', 'ft', 7.5, 0], ['leader.2', '2 in leader', 'subcontract', 'each', 42, 0], ['leader.3', '3 in leader', 'subcontract', 'each', 50, 0], ['leader.4', '4 in leader', 'subcontract', 'each', 64, 0],
  ['basin.18', 'Basin 18 in with lid', 'material', 'each', 210, 3], ['basin.24', 'Basin 24 in with lid', 'material', 'each', 290, 3.5], ['basin.30', 'Basin 30 in with lid', 'material', 'each', 420, 4], ['basin.36', 'Basin 36 in with lid', 'material', 'each', 610, 5],
  ['pump', 'Pump', 'material', 'each', 330, 0.75], ['checkValve', 'Check valve', 'material', 'each', 52, 0.2], ['union', 'Union and ball valve', 'material', 'each', 26, 0.2], ['weepHole', 'Weep hole', 'labour', 'each', 0, 0.1],
  ['pressurePipe.1-1/4', '1 1/4 in pressure pipe', 'material', 'ft', 1.1, 0.022], ['pressurePipe.1-1/2', '1 1/2 in pressure pipe', 'material', 'ft', 1.35, 0.022], ['pressurePipe.2', '2 in pressure pipe', 'material', 'ft', 1.9, 0.025], ['pressurePipe.3', '3 in pressure pipe', 'material', 'ft', 4.1, 0.035],
  ['pressureFitting', 'Pressure fitting', 'material', 'each', 14, 0.15], ['outlet.emitter', 'Pop-up emitter', 'material', 'each', 60, 0.5], ['outlet.percolationTee', 'Percolation tee and emitter', 'material', 'each', 84, 0.75],
  ['outlet.daylight', 'Daylight end with apron', 'material', 'each', 45, 0.75], ['outlet.dryWell', 'Dry well, crates', 'material', 'each', 520, 4], ['outlet.curb', 'Curb outlet', 'material', 'each', 130, 2.5], ['outlet.stormConnection', 'Storm connection', 'subcontract', 'each', 850, 1],
  ['outlet.ditch', 'Swale outlet with apron', 'material', 'each', 75, 1.5], ['electrician', 'Electrician: circuit, GFCI, cover', 'subcontract', 'lump', 950, 0.5], ['alarm', 'High-water alarm', 'material', 'each', 95, 0.5], ['backup', 'Battery backup pump', 'material', 'each', 780, 1.5],
  ['sod', 'Sod', 'material', 'ft2', 0.41, 0.01], ['pavers', 'Relay pavers', 'labour', 'ft2', 0, 0.12], ['commissioning', 'Tests and pump-down', 'labour', 'lump', 0, 2], ['asBuilt', 'As-built levels and ties', 'labour', 'lump', 0, 1], ['handover', 'Handover and teaching', 'labour', 'lump', 0, 1],
];

export const priceList: readonly (Item & { readonly code: string })[] = rows.map(([code, name, kind, unit, dollars, hoursPerUnit]) => ({
  code, name, kind, unit, unitCost: Math.round(dollars * 10_000), hoursPerUnit, taxable: kind === 'material', active: true,
}));

const allowance = (code: string, name: string, kind: Item['kind'], dollars: number): PriceLineInput => ({
  code, name, kind, unit: 'lump', quantity: 1, unitCost: Math.round(dollars * 10_000), taxable: kind === 'material', origin: 'allowance', reason: null,
});

/** What no drawing shows and every estimator adds. */
export const ternHollowAllowances: readonly PriceLineInput[] = [
  allowance('dowels', 'Dowels and epoxy', 'material', 90), allowance('fabric', 'Filter fabric', 'material', 40), allowance('sundries', 'Primer, cement, tape, tracer', 'material', 60),
  allowance('irrigation', 'Irrigation repair', 'material', 55),
];
