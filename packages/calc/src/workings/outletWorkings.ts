import type { Working } from '../results/results.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, symbol, working, type WorkingInput } from './working.ts';

/** Percolation pit against the content of the line. */
export function outletWorkings({ document, results }: WorkingInput): Working[] {
  return results.outlets.flatMap((item, index) => {
    const outlet = partById(document, item.part);
    if (outlet?.kind !== 'outlet') return [];
    const path = fieldOf(document, outlet.id, 'pit');
    const lines = results.pumps.flatMap((pump, at) => (pump.outlet === outlet.id ? [symbol(`V_${at + 1}`, 'lineVolume', pump.lineVolume, 'volume', `/results/pumps/${at}/lineVolume`)] : []));
    const content = working({
      result: `/results/outlets/${index}/lineVolume`, at: outlet.id, formula: lines.length === 0 ? 'V = 0' : `V = ${lines.map((one) => one.symbol).join(' + ')}`, value: item.lineVolume,
      unit: 'volume', source: 'Content of the pumped lines that end here', symbols: lines,
    });
    if (outlet.pit === null || item.pitVolume === null) return [content];
    const pit = working({
      result: `/results/outlets/${index}/pitVolume`, at: outlet.id, formula: 'V = A*h*n', value: item.pitVolume, unit: 'volume', source: 'Voids of the stone below the tee', symbols: [
        symbol('A', 'pitArea', outlet.pit.area, 'area', `${path}/area`), symbol('h', 'stoneDepth', outlet.pit.depth, 'height', `${path}/depth`),
        symbol('n', 'voids', outlet.pit.voids, 'percent', `${path}/voids`),
      ],
    });
    return [pit, content];
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
