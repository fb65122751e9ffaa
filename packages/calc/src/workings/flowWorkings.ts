import type { DesignDocument, Gutter } from '../document/document.ts';
import { GALLON_PER_MINUTE } from '../common/constants.ts';
import { peakDuration } from '../evaluate/flows.ts';
import { lengthFactor } from '../gutter/eavesGutter.ts';
import { LEADER_FULLNESS } from '../gutter/verticalLeader.ts';
import { depthAt, intensityOf } from '../rain/depthAt.ts';
import type { Working, WorkingStep, WorkingSymbol } from '../results/results.ts';
import { routesOf, type InflowCase, type Route } from '../routing/inflow.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, indexBy, step, symbol, working, type WorkingInput } from './working.ts';

export interface Terms {
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
}

/** Rain of the wettest five minutes as symbols, and its intensity as a step. */
export function peakRain(document: DesignDocument, returnPeriod: number): { readonly symbols: WorkingSymbol[]; readonly steps: WorkingStep[] } {
  const { table, allowance } = document.rain;
  const duration = Math.max(peakDuration, table.durations[0]!);
  const row = table.durations.indexOf(duration);
  const column = table.returnPeriods.indexOf(returnPeriod);
  const depth = depthAt(table, duration, returnPeriod);
  return {
    symbols: [
      symbol('d', 'rainDepth', depth, 'rain', row >= 0 && column >= 0 ? `/rain/table/depths/${row}/${column}` : '/rain/table'),
      symbol('a', 'allowance', allowance, 'percent', '/rain/allowance'),
      symbol('t', 'rainDuration', duration, 'seconds', row >= 0 ? `/rain/table/durations/${row}` : null),
    ],
    steps: [step('i', 'peakIntensity', 'd*(1 + a)/1000/t', intensityOf(depth * (1 + allowance), duration), 'intensity')],
  };
}

export const areaSymbols = (document: DesignDocument, index: number): WorkingSymbol[] => {
  const catchment = document.site.catchments[index]!;
  return [
    symbol(`C_${index + 1}`, 'coefficientOfSurface', catchment.coefficient, 'number', `/site/catchments/${index}/coefficient`),
    symbol(`A_${index + 1}`, 'catchmentArea', catchment.area, 'area', `/site/catchments/${index}/area`),
  ];
};

export const runoffSum = (indices: readonly number[]): string => indices.map((index) => `C_${index + 1}*A_${index + 1}`).join(' + ');

/** What a gutter and its leaders carry at most, as a symbol that points to the lesser of the two. */
export function gutterLimit({ results }: WorkingInput, gutterId: string): WorkingSymbol {
  const index = indexBy(results.gutters, (item) => item.part === gutterId);
  const item = results.gutters[index]!;
  const field = item.capacity <= item.leaderCapacity ? 'capacity' : 'leaderCapacity';
  return symbol(`K_${index + 1}`, 'gutterLimit', item[field], 'flow', `/results/gutters/${index}/${field}`);
}

/** Terms of the flow onto one low spot: what runs there, what its gutters cannot carry, and what they bring. */
function pondTerms(input: WorkingInput, routes: readonly Route[], pond: number): Terms {
  const plain: number[] = [];
  const gutters = new Map<string, { indices: number[]; carried: boolean; excess: boolean }>();
  routes.forEach((route, index) => {
    if (route.gutter === null && route.pond === pond) plain.push(index);
    if (route.gutter === null || (route.pond !== pond && route.excessPond !== pond)) return;
    const known = gutters.get(route.gutter) ?? { indices: [], carried: route.pond === pond, excess: route.excessPond === pond };
    known.indices.push(index);
    gutters.set(route.gutter, known);
  });
  const symbols = plain.flatMap((index) => areaSymbols(input.document, index));
  const terms = plain.length === 0 ? [] : [`i*(${runoffSum(plain)})`];
  for (const [id, { indices, carried, excess }] of gutters) {
    const limit = gutterLimit(input, id);
    const demand = `i*(${runoffSum(indices)})`;
    symbols.push(...indices.flatMap((index) => areaSymbols(input.document, index)));
    if (carried && excess) terms.push(demand);
    else {
      symbols.push(limit);
      terms.push(carried ? `min(${demand}, ${limit.symbol})` : `max(0, ${demand} - ${limit.symbol})`);
    }
  }
  return { formula: terms.length === 0 ? '0*i' : terms.join(' + '), symbols };
}

/** Peak flow onto each low spot, with the system and without. */
export function peakWorkings(input: WorkingInput): Working[] {
  const { document, results } = input;
  const routes: Readonly<Record<'system' | 'bare', Route[]>> = { system: routesOf(document, 'system'), bare: routesOf(document, 'bare') };
  return results.peaks.map((peak, index) => {
    const inflowCase: InflowCase & ('system' | 'bare') = peak.target.endsWith(':bare') ? 'bare' : 'system';
    const spot = peak.target.replace(':bare', '');
    const pond = indexBy(document.site.lowSpots, (item) => item.id === spot);
    const terms = pondTerms(input, routes[inflowCase], pond);
    const rain = peakRain(document, peak.returnPeriod);
    return working({
      result: `/results/peaks/${index}/flow`, at: spot, formula: `Q = ${terms.formula}`, symbols: [...rain.symbols, ...terms.symbols], steps: rain.steps,
      value: peak.flow, unit: 'flow', source: 'Rational method, FHWA HEC-22 chapter 3; mean rain of the wettest five minutes',
    });
  });
}

function gutterSheets(input: WorkingInput, gutter: Gutter, index: number): Working[] {
  const { document, results } = input;
  const item = results.gutters[index]!;
  const field = (name: string): string => fieldOf(document, gutter.id, name);
  const area = gutter.width * gutter.depth * 1e6;
  const leader = partById(document, gutter.drainsTo);
  const base = { at: gutter.id, unit: 'flow' };
  const rain = peakRain(document, document.rain.designReturnPeriod);
  const indices = document.site.catchments.flatMap(({ drainsTo }, at) => (drainsTo.kind === 'part' && drainsTo.id === gutter.id ? [at] : []));
  return [
    working({
      ...base, result: `/results/gutters/${index}/capacity`, formula: 'Q = 0.9*3.48e-5*A^1.25*F_d*F_L/1000', value: item.capacity,
      source: 'EN 12056-3:2000 clause 5 and table 6 for the length factor, from memory; a level gutter, so its fall is not counted', symbols: [
        symbol('W', 'gutterWidth', gutter.width, 'diameter', field('width')), symbol('D', 'gutterDepth', gutter.depth, 'diameter', field('depth')),
        symbol('F_L', 'lengthFactor', lengthFactor(gutter.length / gutter.depth, 0), 'number', field('length')),
      ], steps: [
        step('A', 'gutterAreaInMillimetres', 'W*D*1e6', area, 'number'),
        step('F_d', 'depthFactor', 'min(1, (D/W)^(1/4))', Math.min(1, Math.sqrt(Math.sqrt(gutter.depth / gutter.width))), 'number'),
      ],
    }),
    leader?.kind === 'leader'
      ? working({
        ...base, result: `/results/gutters/${index}/leaderCapacity`, formula: 'Q = n*27.8*r^(5/3)*(d/0.0254)^(8/3)*q', value: item.leaderCapacity,
        source: 'Wyly and Eaton; 2006 National Standard Plumbing Code table 13.6.1, in gpm and inches', symbols: [
          symbol('n', 'leaderCount', leader.count, 'count', fieldOf(document, leader.id, 'count')), symbol('r', 'leaderFullness', LEADER_FULLNESS, 'number'),
          symbol('d', 'leaderDiameter', leader.diameter, 'diameter', fieldOf(document, leader.id, 'diameter')), symbol('q', 'oneGallonPerMinute', GALLON_PER_MINUTE, 'flow'),
        ],
      })
      : working({
        ...base, result: `/results/gutters/${index}/leaderCapacity`, formula: 'Q = Q_g', value: item.leaderCapacity, source: 'No leader narrows this gutter',
        symbols: [symbol('Q_g', 'gutterCapacity', item.capacity, 'flow', `/results/gutters/${index}/capacity`)],
      }),
    working({
      ...base, result: `/results/gutters/${index}/demand`, formula: indices.length === 0 ? 'Q = 0*i' : `Q = i*(${runoffSum(indices)})`, value: item.demand,
      source: 'Rational method, FHWA HEC-22 chapter 3; mean rain of the wettest five minutes',
      symbols: [...rain.symbols, ...indices.flatMap((at) => areaSymbols(document, at))], steps: rain.steps,
    }),
    working({
      ...base, result: `/results/gutters/${index}/overflow`, formula: 'Q_o = max(0, Q_d - min(Q_g, Q_l))', value: item.overflow, source: 'Balance of flows', symbols: [
        symbol('Q_d', 'gutterDemand', item.demand, 'flow', `/results/gutters/${index}/demand`), symbol('Q_g', 'gutterCapacity', item.capacity, 'flow', `/results/gutters/${index}/capacity`),
        symbol('Q_l', 'leaderCapacity', item.leaderCapacity, 'flow', `/results/gutters/${index}/leaderCapacity`),
      ], tolerance: 1e-6,
    }),
  ];
}

export function gutterWorkings(input: WorkingInput): Working[] {
  return input.results.gutters.flatMap((item, index) => gutterSheets(input, partById(input.document, item.part) as Gutter, index));
}
