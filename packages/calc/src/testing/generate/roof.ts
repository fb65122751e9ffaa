import type { Gutter } from '../../document/document.ts';
import { rounded } from './draw.ts';
import { outlet } from './parts.ts';
import type { Builder } from './system.ts';

function leader(build: Builder, drainsTo: string): string {
  const { draw } = build;
  return build.add({ kind: 'leader', id: build.id('D'), name: 'Leader', drainsTo, diameter: draw.pick([0.0635, 0.0762, 0.1016]), count: draw.pick([1, 1, 2]) }).id;
}

/** A lid on the lawn, well below the eaves, at the end of what the roof sends. */
function lid(build: Builder): { readonly id: string; readonly level: number } {
  const { draw, ground } = build;
  const end = outlet(build, rounded(ground.floor - draw.between(0.05, 0.5)), 'line');
  return { id: end.id, level: end.level };
}

/** Where the leaders of a roof go: a sealed line to its lid, the ground, or a basin or catch basin of the system. */
function below(build: Builder): string {
  const { draw, ground } = build;
  const stores = build.parts.filter((part) => part.kind === 'catchBasin' || part.kind === 'basin').map(({ id }) => id);
  if (stores.length > 0 && draw.chance(0.25)) return leader(build, draw.pick(stores));
  const end = lid(build);
  if (draw.chance(0.25)) return leader(build, end.id);
  const line = build.add({
    kind: 'roofLine', id: build.id('R'), name: 'Roof line', drainsTo: end.id, diameter: draw.pick([0.0762, 0.1016]), length: draw.between(4, 40), roughness: draw.between(0.009, 0.012),
    bends90: draw.whole(0, 3), bends45: draw.whole(0, 3), unsealedJointLevel: rounded(Math.max(end.level, ground.floor) + draw.between(0.05, 0.6)),
  });
  return draw.chance(0.85) ? leader(build, line.id) : line.id;
}

/** One or two gutters with the roof that drains to them; what they cannot carry falls on a low spot. */
export function roofTrain(build: Builder): void {
  const { draw, ground } = build;
  const target = below(build);
  for (let i = draw.pick([1, 1, 2]); i > 0; i -= 1) {
    const gutter: Gutter = build.add({
      kind: 'gutter', id: build.id('G'), name: 'Gutter', drainsTo: target, width: draw.between(0.1, 0.16), depth: draw.between(0.07, 0.12), length: draw.between(3, 14),
      slope: draw.between(0, 0.01), overflowsTo: draw.pick(ground.spots).id,
    });
    for (let k = draw.pick([1, 1, 2]); k > 0; k -= 1) build.surface({ kind: 'part', id: gutter.id }, 'roof');
  }
}
