import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { isNumericQuantity, quantity, type NumericQuantity } from '../format.ts';
import type { Language, Units } from '../languages.ts';
import { messages } from '../messages.ts';
import { render } from '../render.ts';
import { parseTemplate, type Piece } from '../template.ts';

/** A number of a sentence, where it came from and how it is measured. */
export interface ToldNumber {
  readonly value: number;
  readonly unit: NumericQuantity;
  /** JSON pointer into the evaluation (/results, /findings, /workings) or the document (/site, /rain, /system, /construction). */
  readonly path: string;
}

/** A name or text of the document that stands in a sentence; figures in it are its own. */
export interface ToldName {
  readonly text: string;
  readonly path: string;
}

export interface Paragraph {
  readonly text: string;
  readonly numbers: readonly ToldNumber[];
  readonly names: readonly ToldName[];
}

export interface Reader {
  readonly language: Language;
  readonly units: Units;
}

/** All that a sentence may point to: the document and what was evaluated from it. */
export type Ground = DesignDocument & Evaluation;

export function pointedAt(ground: Ground, pointer: string): unknown {
  let here: unknown = ground;
  for (const word of pointer.split('/').slice(1)) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = (here as Readonly<Record<string, unknown>>)[word];
  }
  return here;
}

/** What a placeholder shows: a pointer for a figure or a name; for a `term` a message code; for a `figure` also its quantity. */
export type Slots = Readonly<Record<string, string | { readonly path: string; readonly unit: NumericQuantity }>>;

type ExplainCode = Extract<keyof typeof messages, `explain.${string}` | 'designs.notSealed'>;

/** One sentence. A figure can only enter through a pointer, so none stands here that the engine does not hold. */
export function tell(ground: Ground, reader: Reader, code: ExplainCode, slots: Slots): Paragraph {
  const numbers: ToldNumber[] = [];
  const names: ToldName[] = [];
  const write = (piece: Piece): string => {
    if (typeof piece === 'string') return piece;
    const slot = slots[piece.name];
    if (slot === undefined || 'forms' in piece) throw new RangeError(`${code} has no place for ${piece.name}`);
    const path = typeof slot === 'string' ? slot : slot.path;
    if (piece.kind === 'term') return render(reader.language, reader.units, path);
    const value = pointedAt(ground, path);
    if (typeof slot === 'string' && !isNumericQuantity(piece.kind)) {
      if (typeof value !== 'string') throw new RangeError(`${code} finds no text at ${path}`);
      names.push({ text: value, path });
      return value;
    }
    const unit = typeof slot === 'string' ? piece.kind : slot.unit;
    if (typeof value !== 'number' || !isNumericQuantity(unit)) throw new RangeError(`${code} finds no number at ${path}`);
    numbers.push({ value, unit, path });
    return quantity(reader.language, reader.units, unit, value);
  };
  return { text: parseTemplate(messages[code][reader.language]).map(write).join(''), numbers, names };
}

/** Sentences that belong together. */
export function joined(paragraphs: readonly Paragraph[]): Paragraph {
  return {
    text: paragraphs.map(({ text }) => text).join(' '), numbers: paragraphs.flatMap(({ numbers }) => numbers), names: paragraphs.flatMap(({ names }) => names),
  };
}
