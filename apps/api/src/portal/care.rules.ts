import type { DesignDocument } from '@yardfall/calc';

export interface CareItem {
  readonly code: string;
  readonly who: 'customer' | 'company';
  readonly when: string;
}

const care = (code: string, who: CareItem['who'], when: string): CareItem => ({ code: `portal.care.${code}`, who, when: `portal.when.${when}` });

/** Who cares for what and when, for the parts that were built (common practice; the yearly pump-down and the levels are ours). */
export function carePlan(document: DesignDocument): CareItem[] {
  const { parts } = document.system;
  const has = (...kinds: string[]) => parts.some((part) => kinds.includes(part.kind));
  const lid = parts.some((part) => part.kind === 'outlet' && (part.outletKind === 'emitter' || part.outletKind === 'percolationTee'));
  const { electrical } = document.construction;
  return [
    ...(has('channel', 'catchBasin') ? [care('basket', 'customer', 'monthly')] : []),
    ...(has('pump') ? [care('bucket', 'customer', 'quarterly'), care('alarm', 'customer', 'quarterly')] : []),
    ...(lid ? [care('emitter', 'customer', 'springSummer')] : []),
    ...(has('pump') ? [care('vacuum', 'company', 'yearly'), care('pumpDown', 'company', 'yearly')] : []),
    ...(has('pipe', 'roofLine') ? [care('flush', 'company', 'yearly')] : []),
    ...(electrical?.backup === 'battery' ? [care('battery', 'company', 'yearly')] : []),
    ...(has('pump') ? [care('pumpAge', 'customer', 'sevenToTenYears')] : []),
    care('levels', 'company', 'thirtyDaysAndYear'), care('grade', 'customer', 'afterYardWork'),
  ];
}
