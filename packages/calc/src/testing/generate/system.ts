import type { Catchment, LowSpot, Part } from '../../document/document.ts';
import type { Draw } from './draw.ts';
import { rounded } from './draw.ts';
import { basin, catchBasin, channel, cleanout, outlet, pipe, swale, underdrain } from './parts.ts';
import { pumpSet } from './pumped.ts';
import { generatedCatchment, type Ground } from './site.ts';
import { roofTrain } from './roof.ts';

/** How the water of a low spot leaves: by itself, into the soil, through a pump, or not at all. */
export type Scheme = 'gravity' | 'infiltration' | 'pumped' | 'none';

export interface SystemLimits {
  /** One of these is drawn for each low spot. */
  readonly schemes: readonly Scheme[];
  /** Whether outlets may send water back into a low spot, stand under water or soak away. */
  readonly recirculation: boolean;
}

/** Parts as they are built, downstream ends first known by their level. */
export class Builder {
  readonly parts: Part[] = [];
  readonly catchments: Catchment[] = [];
  private readonly counts = new Map<string, number>();
  readonly draw: Draw;
  readonly ground: Ground;
  readonly limits: SystemLimits;

  constructor(draw: Draw, ground: Ground, limits: SystemLimits) {
    this.draw = draw;
    this.ground = ground;
    this.limits = limits;
  }

  id(letter: string): string {
    const next = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, next);
    return `${letter}${next}`;
  }

  add<T extends Part>(part: T): T {
    this.parts.push(part);
    return part;
  }

  surface(drainsTo: Catchment['drainsTo'], kind: Catchment['surface'] | null = null): void {
    this.catchments.push(generatedCatchment(this.draw, this.id('C'), drainsTo, kind));
  }
}

/** One or two inlets of a low spot; the level that their water leaves at. */
function inlets(build: Builder, spot: LowSpot): { readonly ids: string[]; readonly level: number } {
  const { draw } = build;
  const kinds = Array.from({ length: draw.chance(0.25) ? 2 : 1 }, () => draw.chance(0.7));
  const made = kinds.map((isChannel) => (isChannel ? channel(build, spot) : catchBasin(build, spot)));
  return { ids: made.map(({ id }) => id), level: Math.min(...made.map((part) => (part.kind === 'channel' ? part.invertDown : part.invertOut))) };
}

/** Sets where a part drains, once what is below it stands. */
function joinTo(build: Builder, ids: readonly string[], target: string): void {
  build.parts.forEach((part, index) => {
    if (ids.includes(part.id)) build.parts[index] = { ...part, drainsTo: target } as Part;
  });
}

/** Pipes from the inlets on, in series, with cleanouts between some; gives the last id and its invert. */
function run(build: Builder, from: { readonly ids: readonly string[]; readonly level: number }): { readonly id: string; readonly level: number } {
  const { draw } = build;
  let ids = from.ids;
  let level = from.level;
  let last = '';
  const count = draw.pick([1, 1, 1, 2, 3]);
  for (let i = 0; i < count; i += 1) {
    const part = pipe(build, level);
    joinTo(build, ids, part.id);
    level = part.invertDown;
    last = part.id;
    ids = [last];
    if (i < count - 1 && draw.chance(0.4)) {
      last = cleanout(build).id;
      joinTo(build, ids, last);
      ids = [last];
    }
  }
  return { id: last, level };
}

function gravity(build: Builder, spot: LowSpot, soaks: boolean): void {
  const end = run(build, inlets(build, spot));
  let { id, level } = end;
  if (!soaks && build.draw.chance(0.25)) {
    const ditch = swale(build);
    joinTo(build, [id], ditch.id);
    id = ditch.id;
    level = rounded(level - ditch.length * ditch.slope);
  }
  joinTo(build, [id], outlet(build, level, soaks ? 'dryWell' : 'gravity').id);
}

function pumped(build: Builder, spots: readonly LowSpot[]): void {
  const { draw } = build;
  const ends = spots.map((spot) => run(build, inlets(build, spot)));
  const inlet = Math.min(...ends.map(({ level }) => level));
  const pit = basin(build, inlet);
  joinTo(build, ends.map(({ id }) => id), pit.id);
  if (draw.chance(0.3)) underdrain(build, inlet, pit.id);
  pumpSet(build, pit);
}

/** The whole system with the surfaces that drain to it. */
export function generatedSystem(draw: Draw, ground: Ground, limits: SystemLimits): Builder {
  const build = new Builder(draw, ground, limits);
  const toPump: LowSpot[] = [];
  for (const spot of ground.spots) {
    for (let i = draw.whole(1, 3); i > 0; i -= 1) build.surface({ kind: 'lowSpot', id: spot.id });
    const scheme = draw.pick(limits.schemes);
    if (scheme === 'pumped') toPump.push(spot);
    else if (scheme !== 'none') gravity(build, spot, scheme === 'infiltration');
  }
  if (toPump.length > 1 && draw.chance(0.2)) for (const spot of toPump) pumped(build, [spot]);
  else if (toPump.length > 0) pumped(build, toPump);
  for (let i = draw.pick([0, 0, 1, 2]); i > 0; i -= 1) roofTrain(build);
  if (draw.chance(0.2)) build.surface({ kind: 'offSite' });
  return build;
}
