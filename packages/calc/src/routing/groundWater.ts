import type { DesignDocument, Underdrain } from '../document/document.ts';
import { designConductivity, interceptorFlow } from '../underdrain/interceptor.ts';
import { dupuitFlow } from '../underdrain/reliefDrain.ts';
import type { StorePlace } from './model.ts';
import { partsOf } from './pathParts.ts';

/** Steady ground water that an underdrain takes, per length of drain [m2/s]: what its seepage gives, or what was typed. */
export function underdrainInflow({ seepage, inflowPerLength }: Underdrain): number {
  if (seepage === null) return inflowPerLength;
  const conductivity = designConductivity(seepage.conductivity, seepage.fromTexture ? 'texture' : 'test');
  if (seepage.method === 'interceptor') return seepage.gradient === 0 ? 0 : interceptorFlow(conductivity, seepage.gradient, seepage.depth);
  const near = seepage.barrierBelow;
  return seepage.sides * dupuitFlow(conductivity, near + seepage.waterAbove, near, seepage.reach);
}

/** Ground water of a whole underdrain [m3/s]. */
export function underdrainFlow(drain: Underdrain): number {
  return underdrainInflow(drain) * drain.length;
}

/** Steady ground water of all underdrains that end in a store [m3/s]. */
export function groundWaterOf(document: DesignDocument, ends: (partId: string) => StorePlace | null, kind: StorePlace['kind'], index: number): number {
  return partsOf(document, 'underdrain').reduce((sum, drain) => {
    const end = ends(drain.id);
    return end?.kind === kind && end.index === index ? sum + underdrainFlow(drain) : sum;
  }, 0);
}
