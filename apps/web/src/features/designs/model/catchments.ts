import type { Catchment, DesignDocument, Surface } from '@yardfall/calc';
import { freeId } from './defaults.ts';

export const surfaces: readonly Surface[] = ['roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour'];

type Defaults = Pick<Catchment, 'coefficient' | 'depressionStorage' | 'flowLength' | 'slope' | 'roughness'>;

/**
 * What a surface starts with. Coefficients: hard surfaces 0.95 and lawn 0.30 on flat sandy ground with a high water table (ours, within the
 * published spread of the ASCE table); depression storage and Manning n of overland flow after TR-55 table 3-1 and HEC-22.
 */
const defaults: Record<Surface, Defaults> = {
  roof: { coefficient: 0.95, depressionStorage: 0.5, flowLength: 4.5, slope: 0.33, roughness: 0.012 },
  paving: { coefficient: 0.95, depressionStorage: 1, flowLength: 5, slope: 0.02, roughness: 0.012 },
  lawn: { coefficient: 0.3, depressionStorage: 2.5, flowLength: 9, slope: 0.01, roughness: 0.24 },
  bed: { coefficient: 0.2, depressionStorage: 4, flowLength: 3, slope: 0.02, roughness: 0.24 },
  gravel: { coefficient: 0.6, depressionStorage: 2.5, flowLength: 5, slope: 0.02, roughness: 0.03 },
  permeablePaving: { coefficient: 0.65, depressionStorage: 2, flowLength: 5, slope: 0.02, roughness: 0.02 },
  pool: { coefficient: 1, depressionStorage: 0, flowLength: 5, slope: 0.01, roughness: 0.012 },
  neighbour: { coefficient: 0.3, depressionStorage: 2.5, flowLength: 15, slope: 0.02, roughness: 0.24 },
};

export function surfaceDefaults(surface: Surface): Defaults {
  return defaults[surface];
}

export function newCatchment(document: DesignDocument, name: string): Catchment {
  const spot = document.site.lowSpots[0];
  return { id: freeId(document.site.catchments, 'C'), name, surface: 'paving', area: 30, ...defaults.paving, loss: { method: 'volumetric' }, response: 'kinematic', drainsTo: spot ? { kind: 'lowSpot', id: spot.id } : { kind: 'offSite' } };
}
