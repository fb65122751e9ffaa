import type { DesignDocument } from '../document/document.ts';
import type { Results, Working } from '../results/results.ts';

export interface WorkingInput {
  readonly document: DesignDocument;
  readonly results: Results;
}

export type WorkingSymbol = Working['symbols'][number];

/** A symbol of a formula. `meaning` is a text code; `from` the path of the input or result it was read from. */
export function symbol(name: string, meaning: string, value: number, unit: string, from: string | null = null): WorkingSymbol {
  return { symbol: name, meaning, value, unit, from };
}

export function working(result: string, formula: string, symbols: readonly WorkingSymbol[], value: number, unit: string, source: string): Working {
  return { result, formula, symbols, value, unit, source };
}

/** JSON pointer of a part's field in the document. */
export const fieldOf = (document: DesignDocument, partId: string, field: string): string =>
  `/system/parts/${document.system.parts.findIndex((part) => part.id === partId)}/${field}`;
