import type { Basin, CurvePoint, DischargeLine, Pump } from '../../document/document.ts';
import { rounded } from './draw.ts';
import { outlet } from './parts.ts';
import type { Builder } from './system.ts';

/** A falling curve as small sump pumps have; datasheets print it from either end. */
function curve(build: Builder, lift: number): CurvePoint[] {
  const { draw } = build;
  const shutOff = rounded(Math.max(lift, 0.5) * draw.between(1.6, 3) + 1.5);
  const most = draw.between(0.0015, 0.006);
  const count = draw.whole(3, 6);
  const points = Array.from({ length: count }, (_, i) => {
    const x = i / (count - 1);
    return { flow: rounded(most * x), head: rounded(shutOff * (1 - 0.25 * x - 0.7 * x * x)) };
  });
  return draw.chance(0.2) ? points.reverse() : points;
}

function pump(build: Builder, pit: Basin, lift: number, role: Pump['role']): Pump {
  const { draw } = build;
  const battery = role === 'standby' && draw.chance(0.5);
  return build.add({
    kind: 'pump', id: build.id('M'), name: role === 'duty' ? 'Pump' : 'Standby pump', drainsTo: null, basin: pit.id, curveName: 'A', curve: curve(build, lift), solids: draw.between(0.006, 0.02),
    minSubmergence: draw.between(0.05, 0.15), role, startLevel: role === 'standby' && draw.chance(0.5) ? rounded(pit.onLevel + draw.between(0.03, 0.1)) : null,
    power: battery ? 'battery' : 'mains', energy: battery ? draw.between(5e5, 4e6) : null, inputPower: battery ? draw.between(200, 800) : null,
  });
}

function line(build: Builder, top: number): DischargeLine {
  const { draw } = build;
  const end = outlet(build, top, 'line');
  return build.add({
    kind: 'dischargeLine', id: build.id('N'), name: 'Discharge line', drainsTo: end.id, innerDiameter: draw.pick([0.035052, 0.040894, 0.052502]), nominal: '1 1/2 in', length: draw.between(5, 50),
    hazenWilliamsC: draw.between(120, 150),
    fittings: [{ kind: 'bend90', count: draw.whole(0, 5), equivalentLength: 1.2192 }, { kind: 'bend45', count: draw.whole(0, 3), equivalentLength: 0.64008 }],
    highPoint: draw.chance(0.2) ? rounded(top + draw.between(0.05, 0.3)) : null, lowestSag: draw.chance(0.2) ? rounded(top - draw.between(0.2, 0.5)) : null,
    wallRoughness: draw.between(1.5e-6, 5e-5), coverMin: draw.between(0.15, 0.6),
  });
}

/** Connects a pump to a line through a check valve, present, left out or drawn as missing. */
function connect(build: Builder, from: Pump, to: DischargeLine): void {
  const { draw } = build;
  const at = build.parts.findIndex((part) => part.id === from.id);
  if (draw.chance(0.1)) {
    build.parts[at] = { ...from, drainsTo: to.id };
    return;
  }
  const valve = build.add({ kind: 'checkValve', id: build.id('V'), name: 'Check valve', drainsTo: to.id, equivalentLength: draw.between(2, 5), present: draw.chance(0.85) });
  build.parts[at] = { ...from, drainsTo: valve.id };
}

/** Duty pump, line and outlet of a basin; sometimes a second pump on the same line or on its own, sometimes two duty pumps. */
export function pumpSet(build: Builder, pit: Basin): void {
  const { draw, ground } = build;
  const top = rounded(ground.floor - draw.between(-0.4, 0.6));
  const lift = top - pit.offLevel;
  const discharge = line(build, top);
  const duty = pump(build, pit, lift, 'duty');
  connect(build, duty, discharge);
  if (draw.chance(0.7)) build.add({ kind: 'weepHole', id: build.id('W'), name: 'Weep hole', drainsTo: null, pump: duty.id, diameter: draw.between(0.003, 0.006) });
  if (draw.chance(0.3)) {
    const second = pump(build, pit, lift, draw.chance(0.8) ? 'standby' : 'duty');
    connect(build, second, draw.chance(0.5) ? discharge : line(build, top));
  }
}
