import type { Construction, LimitOverride, Part } from '../../document/document.ts';
import { rounded, type Draw } from './draw.ts';

export function generatedConstruction(draw: Draw, floor: number, parts: readonly Part[]): Construction {
  const pipes = parts.filter((part) => part.kind === 'pipe' || part.kind === 'dischargeLine');
  const channels = parts.filter((part) => part.kind === 'channel');
  const pumped = parts.some((part) => part.kind === 'pump');
  return {
    slabCuts: channels.map((part, i) => ({ id: `X${i + 1}`, name: 'Slab', length: draw.between(1, 9), width: draw.between(0.3, 0.5), thickness: 0.1016, reinforcement: draw.pick(['none', 'mesh', 'bar'] as const), part: part.id })),
    trenches: pipes.map((part, i) => ({ id: `T${i + 1}`, name: 'Trench', length: draw.between(1, 40), width: draw.between(0.15, 0.4), depth: draw.between(0.3, 1), soil: draw.pick(['sand', 'loam', 'clay'] as const), part: part.id })),
    electrical: pumped && draw.chance(0.9)
      ? {
        dedicatedCircuit: draw.chance(0.8), gfci: draw.chance(0.9), extensionCord: draw.chance(0.1), alarm: draw.pick(['differentCircuit', 'sameCircuitBattery', 'none'] as const),
        backup: draw.pick(['none', 'battery', 'secondPump', 'generatorInlet'] as const), runLength: draw.between(3, 40), current: draw.between(4, 12), conductorResistance: 0.00521, voltage: 120,
        burial: draw.chance(0.5) ? { method: draw.pick(['direct', 'conduit', 'gfciCable'] as const), depth: draw.between(0.2, 0.7) } : null,
        receptacleLevel: draw.chance(0.5) ? rounded(floor + draw.between(-0.1, 0.6)) : null,
      }
      : null,
    restoration: { sodArea: draw.between(0, 40), paverArea: draw.between(0, 10) },
    treesNear: draw.chance(0.3), poolWithin3m: draw.chance(0.1), trenchNearFooting: draw.chance(0.2), foundationWithin1ft: draw.chance(0.1),
  };
}

/** A company that asks for more freeboard than the house rule. */
export function generatedLimits(draw: Draw): LimitOverride[] {
  if (!draw.chance(0.2)) return [];
  return [{ limit: 'L5', pass: 0.05, fail: 0.025, by: 'Owner', at: '2025-01-01', why: 'Clay subsoil' }];
}
