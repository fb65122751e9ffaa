import type { Seepage, Underdrain } from '../document/document.ts';
import type { Working, WorkingSymbol } from '../results/results.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, step, symbol, working, type WorkingInput } from './working.ts';

interface PerLength {
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  readonly source: string;
  readonly value: number;
}

/** Ground water per length, as typed or as the seepage gives it. */
function perLength(drain: Underdrain, path: string): PerLength {
  const { seepage } = drain;
  if (seepage === null) {
    return {
      formula: 'q_t', value: drain.inflowPerLength, source: 'Steady ground water, as typed', symbols: [symbol('q_t', 'inflowPerLength', drain.inflowPerLength, 'number', path.replace(/seepage$/, 'inflowPerLength'))],
    };
  }
  const conductivity = symbol('K', 'seepageConductivity', seepage.conductivity, 'number', `${path}/conductivity`);
  if (seepage.method === 'interceptor') {
    return {
      formula: 'K*i*d', value: seepage.conductivity * seepage.gradient * seepage.depth, source: 'Interceptor drain, Darcy; NRCS EFH chapter 14', symbols: [
        conductivity, symbol('i', 'seepageGradient', seepage.gradient, 'number', `${path}/gradient`), symbol('d', 'seepageDepth', seepage.depth, 'length', `${path}/depth`),
      ],
    };
  }
  return relief(seepage, conductivity, path);
}

function relief(seepage: Extract<Seepage, { readonly method: 'relief' }>, conductivity: WorkingSymbol, path: string): PerLength {
  const high = seepage.barrierBelow + seepage.waterAbove;
  const low = seepage.barrierBelow;
  return {
    formula: 'm*K*((h_b + h_w)^2 - h_b^2)/(2*E)', value: (seepage.sides * seepage.conductivity * (high * high - low * low)) / (2 * seepage.reach), source: 'Relief drain, Dupuit; NRCS EFH chapter 14', symbols: [
      conductivity, symbol('m', 'seepageSides', seepage.sides, 'count', `${path}/sides`), symbol('h_w', 'seepageHigh', seepage.waterAbove, 'length', `${path}/waterAbove`),
      symbol('h_b', 'seepageLow', seepage.barrierBelow, 'length', `${path}/barrierBelow`), symbol('E', 'seepageReach', seepage.reach, 'length', `${path}/reach`),
    ],
  };
}

export function underdrainWorkings({ document, results }: WorkingInput): Working[] {
  return results.underdrains.flatMap((item, index) => {
    const drain = partById(document, item.part);
    if (drain?.kind !== 'underdrain') return [];
    const { formula, symbols, source, value } = perLength(drain, fieldOf(document, drain.id, 'seepage'));
    return [working({
      result: `/results/underdrains/${index}/inflow`, at: drain.id, formula: 'Q = q*L', value: item.inflow, unit: 'flow', source, tolerance: 1e-6,
      symbols: [...symbols, symbol('L', 'length', drain.length, 'length', fieldOf(document, drain.id, 'length'))], steps: [step('q', 'inflowPerLength', formula, value, 'number')],
    })];
  });
}
