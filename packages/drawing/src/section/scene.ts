import type { DesignDocument, Evaluation } from '@yardfall/calc';
import type { Point } from '../display.ts';
import type { Frame } from './frame.ts';
import type { Layout } from './layout.ts';
import type { SectionOptions } from './options.ts';
import type { Pen } from './pen.ts';

/** Everything that one stroke of the section may ask for. */
export interface Scene {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  readonly layout: Layout;
  readonly ground: readonly Point[];
  readonly frame: Frame;
  readonly options: SectionOptions;
  readonly pen: Pen;
}

export const box = (x0: number, x1: number, y0: number, y1: number): Point[] => [[x0, y0], [x1, y0], [x1, y1], [x0, y1]];
