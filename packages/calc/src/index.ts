export type * from './document/document.ts';
export type * from './results/results.ts';
