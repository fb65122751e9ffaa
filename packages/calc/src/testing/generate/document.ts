import type { DesignDocument } from '../../document/document.ts';
import { generatedConstruction, generatedLimits } from './construction.ts';
import { Draw } from './draw.ts';
import { generatedRain } from './rain.ts';
import { generatedGround, generatedSite } from './site.ts';
import { generatedSystem, type SystemLimits } from './system.ts';

const anything: SystemLimits = { schemes: ['pumped', 'pumped', 'pumped', 'gravity', 'gravity', 'infiltration', 'none'], recirculation: true };

/**
 * A valid, physically sensible design document that follows from its seed alone: one to three low spots, any number of sills,
 * roofs, inlets, pipes in series and joining, swales, dry wells, basins with one or two pumps, or no system at all.
 */
export function generatedDocument(seed: number, limits: Partial<SystemLimits> = {}): DesignDocument {
  const draw = new Draw(seed);
  const ground = generatedGround(draw);
  const { parts, catchments } = generatedSystem(draw, ground, { ...anything, ...limits });
  return {
    schema: 'yardfall.design', version: 2, title: `Generated ${seed}`, seed, site: generatedSite(draw, ground, catchments), rain: generatedRain(draw), system: { parts },
    construction: generatedConstruction(draw, ground.floor, parts), limits: generatedLimits(draw), sources: { survey: null, rain: null },
  };
}
