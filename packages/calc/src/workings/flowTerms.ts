import type { Part } from '../document/document.ts';
import { routesOf } from '../routing/inflow.ts';
import { pathFrom } from '../routing/pathParts.ts';
import type { WorkingStep, WorkingSymbol } from '../results/results.ts';
import { areaSymbols, gutterLimit, peakRain, runoffSum } from './flowWorkings.ts';
import type { WorkingMeaning } from './codes.ts';
import { symbol, type WorkingInput } from './working.ts';

export interface FlowTerms {
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  readonly steps: readonly WorkingStep[];
}

/** Everything upstream of a part as one sum: inlets, gutters up to what they carry, surfaces that drain straight into a part, ground water. */
export function flowTerms(input: WorkingInput, part: Part): FlowTerms {
  const { document, results } = input;
  const passes = (id: string): boolean => pathFrom(document, id).some((item) => item.id === part.id);
  const terms: string[] = [];
  const symbols: WorkingSymbol[] = [];
  const add = (name: string, meaning: WorkingMeaning, value: number, from: string): void => {
    terms.push(name);
    symbols.push(symbol(name, meaning, value, 'flow', from));
  };
  results.channels.forEach((item, index) => {
    if (item.returnPeriod === document.rain.designReturnPeriod && item.part !== part.id && passes(item.part)) add(`Q_c${index}`, 'flowOfInlet', item.flow, `/results/channels/${index}/flow`);
  });
  results.grates.forEach((item, index) => {
    if (item.part !== part.id && passes(item.part) && !results.channels.some((channel) => channel.part === item.part)) add(`Q_b${index}`, 'flowOfInlet', item.flow, `/results/grates/${index}/flow`);
  });
  results.underdrains.forEach((item, index) => {
    if (item.part !== part.id && passes(item.part)) add(`Q_u${index}`, 'flowOfUnderdrain', item.inflow, `/results/underdrains/${index}/inflow`);
  });
  const direct = directTerms(input, passes);
  return { formula: [...terms, ...direct.terms].join(' + ') || '0*i', symbols: [...symbols, ...direct.symbols], steps: direct.steps };
}

/** Surfaces that a part names: a gutter brings no more than it carries; what falls into a low spot first comes by its inlet. */
function directTerms(input: WorkingInput, passes: (id: string) => boolean): { terms: string[]; symbols: WorkingSymbol[]; steps: WorkingStep[] } {
  const { document, results } = input;
  const rain = peakRain(document, document.rain.designReturnPeriod);
  const routes = routesOf(document, 'system');
  const groups = new Map<string, number[]>();
  document.site.catchments.forEach(({ drainsTo }, index) => {
    if (drainsTo.kind !== 'part' || !passes(drainsTo.id) || routes[index]!.pond >= 0) return;
    groups.set(drainsTo.id, [...(groups.get(drainsTo.id) ?? []), index]);
  });
  const symbols: WorkingSymbol[] = [...rain.symbols];
  const terms = [...groups].map(([id, indices]) => {
    symbols.push(...indices.flatMap((index) => areaSymbols(document, index)));
    const demand = `i*(${runoffSum(indices)})`;
    if (!results.gutters.some((item) => item.part === id)) return demand;
    const limit = gutterLimit(input, id);
    symbols.push(limit);
    return `min(${demand}, ${limit.symbol})`;
  });
  return { terms, symbols, steps: rain.steps };
}
