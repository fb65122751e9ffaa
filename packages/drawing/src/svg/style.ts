import type { Dash, PartState, Role, Weight } from '../display.ts';

/** `classes` leaves color to the page's tokens; `print` writes black, white and gray into the file itself. */
export type Theme = 'classes' | 'print';

type Attrs = Record<string, string | number>;

const printed: Readonly<Record<Role, string>> = {
  ink: '#000', faint: '#555', water: '#000', sill: '#000', ground: '#000', slab: '#333', sound: '#000', watch: '#000',
};

export function paint(theme: Theme, use: 'stroke' | 'fill', role: Role | 'paper' | 'none'): Attrs {
  const other = use === 'stroke' ? 'fill' : 'stroke';
  if (theme === 'classes') return role === 'none' ? { [use]: 'none' } : { class: `dl-${use}-${role}`, [other]: 'none' };
  if (role === 'none') return { [use]: 'none' };
  return { [use]: role === 'paper' ? '#fff' : printed[role], [other]: 'none' };
}

const widths: Readonly<Record<Weight, number>> = { hair: 1, thin: 1, normal: 1.4, bold: 2.4 };

/** Built is drawn solid, next bold, not yet thin; held keeps its line and gets a hatch. */
export function strokeOf(weight: Weight, state: PartState): Attrs {
  const base = widths[weight];
  const width = state === 'next' ? base * 2 : state === 'notYet' ? Math.min(base, 0.8) : base;
  const hair = weight === 'hair';
  return { 'stroke-width': width, ...(hair ? { 'stroke-opacity': 0.2 } : {}) };
}

const dashes: Readonly<Record<Dash, string | null>> = {
  solid: null, dash: '5 3', longDash: '12 4', dot: '0.1 4.2', chain: '14 3 2 3',
};

export function dashOf(dash: Dash): Attrs {
  const pattern = dashes[dash];
  if (pattern === null) return { 'stroke-linejoin': 'round' };
  return { 'stroke-dasharray': pattern, ...(dash === 'dot' ? { 'stroke-linecap': 'round', 'stroke-width': 2 } : {}) };
}
