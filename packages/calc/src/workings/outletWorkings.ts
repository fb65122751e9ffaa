import type { Outlet } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import type { Working, WorkingSymbol } from '../results/results.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, symbol, working, type WorkingInput } from './working.ts';

/** Flow and velocity at the throat: of the fastest of the ways that lead there. */
function exitSheets({ document, results }: WorkingInput, outlet: Outlet, index: number): Working[] {
  const item = results.outlets[index]!;
  if (typeof item.exitFlow !== 'number' || typeof item.exitVelocity !== 'number') return [];
  const ways = waysInto({ document, results }, outlet);
  const { exitFlow } = item;
  const way = ways.find(({ flow }) => near(flow, exitFlow));
  if (way === undefined) return [];
  const base = { at: outlet.id, tolerance: 1e-6 };
  const flow = working({ ...base, result: `/results/outlets/${index}/exitFlow`, formula: `Q = ${way.symbols.map((one) => one.symbol).join(' + ')}`, value: item.exitFlow, unit: 'flow', source: 'Design flow of what leads here', symbols: way.symbols });
  const throat = outlet.exitDiameter ?? way.diameter;
  const own = symbol('Q', 'designFlow', item.exitFlow, 'flow', `/results/outlets/${index}/exitFlow`);
  const pi = symbol('pi', 'pi', PI, 'number');
  if (throat !== null && near((way.flow * 4) / (PI * throat * throat), item.exitVelocity)) {
    const from = outlet.exitDiameter === null ? way.diameterFrom : fieldOf(document, outlet.id, 'exitDiameter');
    return [flow, working({
      ...base, result: `/results/outlets/${index}/exitVelocity`, formula: 'v = Q/(pi/4*D^2)', value: item.exitVelocity, unit: 'velocity', source: 'Flow over the throat',
      symbols: [own, pi, symbol('D', 'exitDiameter', throat, 'diameter', from)],
    })];
  }
  return [flow, working({
    ...base, result: `/results/outlets/${index}/exitVelocity`, formula: 'v = v_p', value: item.exitVelocity, unit: 'velocity', source: 'Velocity of what leads here, running part full',
    symbols: [symbol('v_p', 'velocity', item.exitVelocity, 'velocity', way.velocityFrom)],
  })];
}

interface Way {
  readonly flow: number;
  readonly symbols: readonly WorkingSymbol[];
  readonly diameter: number | null;
  readonly diameterFrom: string | null;
  readonly velocityFrom: string | null;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-9);

function waysInto({ document, results }: Pick<WorkingInput, 'document' | 'results'>, outlet: Outlet): Way[] {
  return document.system.parts.filter(({ drainsTo }) => drainsTo === outlet.id).flatMap((part): Way[] => {
    if (part.kind === 'dischargeLine') {
      const symbols = results.pumps.flatMap((pump, at) => (pump.line === part.id ? [symbol(`Q_${at + 1}`, 'pumpFlow', pump.dutyAtOff.flow, 'flow', `/results/pumps/${at}/dutyAtOff/flow`)] : []));
      return [{ flow: symbols.reduce((sum, { value }) => sum + value, 0), symbols, diameter: part.innerDiameter, diameterFrom: fieldOf(document, part.id, 'innerDiameter'), velocityFrom: null }];
    }
    if (part.kind !== 'pipe' && part.kind !== 'roofLine' && part.kind !== 'swale') return [];
    const [topic, list] = part.kind === 'pipe' ? ['pipes', results.pipes] as const : part.kind === 'roofLine' ? ['roofLines', results.roofLines] as const : ['swales', results.swales] as const;
    const at = list.findIndex((item) => item.part === part.id);
    const item = list[at];
    if (item === undefined) return [];
    const flow = 'designFlow' in item ? item.designFlow : item.flow;
    const pointer = `/results/${topic}/${at}`;
    return [{
      flow, symbols: [symbol('Q_1', 'designFlow', flow, 'flow', `${pointer}/${'designFlow' in item ? 'designFlow' : 'flow'}`)], diameter: part.kind === 'swale' ? null : part.diameter,
      diameterFrom: part.kind === 'swale' ? null : fieldOf(document, part.id, 'diameter'), velocityFrom: part.kind === 'roofLine' ? null : `${pointer}/velocity`,
    }];
  });
}

/** Percolation pit against the content of the line, and what leaves. */
export function outletWorkings(input: WorkingInput): Working[] {
  const { document, results } = input;
  return results.outlets.flatMap((item, index) => {
    const outlet = partById(document, item.part);
    if (outlet?.kind !== 'outlet') return [];
    const path = fieldOf(document, outlet.id, 'pit');
    const lines = results.pumps.flatMap((pump, at) => (pump.outlet === outlet.id ? [symbol(`V_${at + 1}`, 'lineVolume', pump.lineVolume, 'volume', `/results/pumps/${at}/lineVolume`)] : []));
    const content = working({
      result: `/results/outlets/${index}/lineVolume`, at: outlet.id, formula: lines.length === 0 ? 'V = 0' : `V = ${lines.map((one) => one.symbol).join(' + ')}`, value: item.lineVolume,
      unit: 'volume', source: 'Content of the pumped lines that end here', symbols: lines,
    });
    const exits = exitSheets(input, outlet, index);
    if (outlet.pit === null || item.pitVolume === null) return [content, ...exits];
    const pit = working({
      result: `/results/outlets/${index}/pitVolume`, at: outlet.id, formula: 'V = A*h*n', value: item.pitVolume, unit: 'volume', source: 'Voids of the stone below the tee', symbols: [
        symbol('A', 'pitArea', outlet.pit.area, 'area', `${path}/area`), symbol('h', 'stoneDepth', outlet.pit.depth, 'height', `${path}/depth`),
        symbol('n', 'voids', outlet.pit.voids, 'percent', `${path}/voids`),
      ],
    });
    return [pit, content, ...exits];
  });
}

export function dryWellWorkings({ document, results }: WorkingInput): Working[] {
  return results.dryWells.flatMap((item, index) => {
    const outlet = partById(document, item.part);
    if (outlet?.kind !== 'outlet' || outlet.dryWell === null) return [];
    const well = outlet.dryWell;
    const path = fieldOf(document, outlet.id, 'dryWell');
    const pointer = `/results/dryWells/${index}`;
    const area = symbol('A', 'wellArea', well.area, 'area', `${path}/area`);
    const depth = symbol('d', 'wellDepth', well.depth, 'length', `${path}/depth`);
    const voids = symbol('n', 'voids', well.voids, 'percent', `${path}/voids`);
    const rate = symbol('f', 'infiltrationRate', well.infiltrationRate, 'intensity', `${path}/infiltrationRate`);
    const edge = symbol('P', 'wellPerimeter', well.perimeter, 'length', `${path}/perimeter`);
    const source = 'Water balance of a store that soaks through base and wetted sides; ours';
    return [
      working({ result: `${pointer}/store`, at: outlet.id, formula: 'V = A*d*n', value: item.store, unit: 'volume', source: 'Voids of the stone', symbols: [area, depth, voids] }),
      working({ result: `${pointer}/soakage`, at: outlet.id, formula: 'Q = f*(A + P*d)', value: item.soakage, unit: 'flow', source, symbols: [rate, area, edge, depth] }),
      ...(item.emptyTime === null ? [] : [working({
        result: `${pointer}/emptyTime`, at: outlet.id, formula: 'T = n*A/(f*P)*log(1 + P*d/A)', value: item.emptyTime, unit: 'hours', source, symbols: [voids, area, rate, edge, depth],
      })]),
    ];
  });
}

/** Level and volumes of a dry well in the designed storm: what stands in its voids then, and where the rest went. */
export function wellWorkings({ document, results }: WorkingInput): Working[] {
  return results.wells.flatMap((item, index) => {
    const outlet = partById(document, item.part);
    if (outlet?.kind !== 'outlet' || outlet.dryWell === null) return [];
    const well = outlet.dryWell;
    const path = fieldOf(document, outlet.id, 'dryWell');
    const pointer = `/results/wells/${index}`;
    const source = 'Coupled level-pool routing, Chow, Maidment and Mays 1988 section 8.2; soakage through base and wetted sides';
    const through = symbol('V_t', 'wellThroughput', item.soaked + item.overflowed, 'volume');
    return [
      working({
        result: `${pointer}/highestLevel`, at: outlet.id, formula: 'z = z_b + V/(A*n)', value: item.highestLevel, unit: 'level', source, tolerance: 1e-6, symbols: [
          symbol('z_b', 'wellBottom', well.bottomLevel, 'level', `${path}/bottomLevel`),
          symbol('V', 'wellStoredAtCrest', (item.highestLevel - well.bottomLevel) * well.area * well.voids, 'volume'),
          symbol('A', 'wellArea', well.area, 'area', `${path}/area`), symbol('n', 'voids', well.voids, 'percent', `${path}/voids`),
        ],
      }),
      working({
        result: `${pointer}/soaked`, at: outlet.id, formula: 'V = V_t - V_o', value: item.soaked, unit: 'volume', source, tolerance: 1e-6,
        symbols: [through, symbol('V_o', 'wellOverflow', item.overflowed, 'volume', `${pointer}/overflowed`)],
      }),
      working({
        result: `${pointer}/overflowed`, at: outlet.id, formula: 'V = max(0, V_t - V_s)', value: item.overflowed, unit: 'volume', source, tolerance: 1e-6,
        symbols: [through, symbol('V_s', 'wellSoaked', item.soaked, 'volume', `${pointer}/soaked`)],
      }),
    ];
  });
}
