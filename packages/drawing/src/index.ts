export { section } from './section.ts';
export { toSvg, rankFor } from './svg/render.ts';
export type { SvgOptions } from './svg/render.ts';
export { toSvgString, reactProps } from './svg/tree.ts';
export type { SvgNode } from './svg/tree.ts';
export { projection } from './svg/project.ts';
export type { Projection } from './svg/project.ts';
export type { Theme } from './svg/style.ts';
