import type { DesignDocument, DryWell, Outlet, Pipe } from '../../document/document.ts';
import type { Remedy } from '../../results/results.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, remedyOf, setFields } from '../patch.ts';
import { roundUp } from './round.ts';

/** A bed of stone thinner than this is no pit [m]. Source: ours, 4 in. */
const leastDepth = 0.1;

export function widerPit(document: DesignDocument, outlet: Outlet, volume: number): Remedy | null {
  const { pit } = outlet;
  if (pit === null) return null;
  const area = roundUp(volume / (pit.depth * pit.voids));
  return setFields(document, outlet, { 'pit/area': area }, 'remedy.widerPit', { outlet: outlet.name, area });
}

/** The same volume in a shallower pit under the same top; null when too little depth is left. */
export function shallowerPit(document: DesignDocument, outlet: Outlet, depth: number): Remedy | null {
  const { pit } = outlet;
  if (pit === null || depth < leastDepth || depth >= pit.depth) return null;
  const area = roundUp((pit.area * pit.depth) / depth);
  const fields = { 'pit/depth': depth, 'pit/area': area, 'pit/bottomLevel': pit.bottomLevel + pit.depth - depth };
  return setFields(document, outlet, fields, 'remedy.shallowerPit', { outlet: outlet.name, depth, area });
}

/** The same store in a shallower dry well under the same top, its plan growing in both directions. */
export function shallowerWell(document: DesignDocument, outlet: Outlet, well: DryWell, depth: number): Remedy | null {
  if (depth < leastDepth || depth >= well.depth) return null;
  const growth = well.depth / depth;
  const area = roundUp(well.area * growth);
  const fields = {
    'dryWell/depth': depth, 'dryWell/area': area, 'dryWell/perimeter': roundUp(well.perimeter * Math.sqrt(growth)), 'dryWell/bottomLevel': well.bottomLevel + well.depth - depth,
  };
  return setFields(document, outlet, fields, 'remedy.shallowerWell', { outlet: outlet.name, depth, area });
}

/** An outlet lifted to a level, and the ends of the pipes that reach it, if their fall allows it. */
export function raisedOutlet(document: DesignDocument, outlet: Outlet, level: number, limits: Limits): Remedy | null {
  const pipes = document.system.parts.filter((part): part is Pipe => part.kind === 'pipe' && part.drainsTo === outlet.id && part.invertDown < level);
  if (pipes.some((pipe) => (pipe.invertUp - level) / pipe.length < limits.G1.pass)) return null;
  const fields = { level, ...(outlet.waterLevel < level ? { waterLevel: level } : {}) };
  return remedyOf('remedy.raiseOutlet', { outlet: outlet.name, level }, [...fieldsOf(document, outlet, fields), ...pipes.flatMap((pipe) => fieldsOf(document, pipe, { invertDown: level }))]);
}
