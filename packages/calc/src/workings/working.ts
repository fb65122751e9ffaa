import type { DesignDocument } from '../document/document.ts';
import type { EvaluationContext } from '../evaluate/context.ts';
import type { Results, Working, WorkingStep, WorkingSymbol } from '../results/results.ts';
import type { WorkingMeaning } from './codes.ts';

export interface WorkingInput {
  readonly context: EvaluationContext;
  readonly document: DesignDocument;
  readonly results: Results;
}

/** A symbol of a formula. `meaning` is a text code; `from` the JSON pointer of the input or result it was read from. */
export function symbol(name: string, meaning: WorkingMeaning, value: number, unit: string, from: string | null = null): WorkingSymbol {
  return { symbol: name, meaning, value, unit, from };
}

export function step(name: string, meaning: WorkingMeaning, formula: string, value: number, unit: string): WorkingStep {
  return { symbol: name, meaning, formula, value, unit };
}

interface Sheet {
  readonly result: string;
  readonly at: string | null;
  readonly formula: string;
  readonly symbols: readonly WorkingSymbol[];
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly steps?: readonly WorkingStep[];
  readonly solves?: string;
  readonly tolerance?: number;
}

/** Rounding of a dozen operations; what is read from tables says more. */
const exact = 1e-9;

/** Name of a result without its place in a list. */
export const codeOf = (pointer: string): string => pointer.split('/').slice(2).filter((word) => !/^\d+$/.test(word)).join('.');

export function working(sheet: Sheet): Working {
  return {
    result: sheet.result, code: codeOf(sheet.result), at: sheet.at, formula: sheet.formula, symbols: sheet.symbols, steps: sheet.steps ?? [],
    solves: sheet.solves ?? null, value: sheet.value, unit: sheet.unit, source: sheet.source, tolerance: sheet.tolerance ?? exact,
  };
}

/** JSON pointer of a part's field in the document. */
export const fieldOf = (document: DesignDocument, partId: string, field: string): string =>
  `/system/parts/${document.system.parts.findIndex((part) => part.id === partId)}/${field}`;

export const indexBy = <T>(list: readonly T[], matches: (item: T) => boolean): number => list.findIndex(matches);
