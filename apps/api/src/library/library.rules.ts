import { CalcProblem, pumpCurve } from '@yardfall/calc';
import type { LibraryContent } from '@yardfall/contracts';

/** Points of a datasheet that are needed to read a curve between them: ours, stated. */
export const leastPoints = 3;

/** What is wrong with an entry: a code of the text catalogues and the field. Null when the engine can take it. */
export interface ContentProblem {
  readonly code: 'library.fewPoints' | 'library.noShutOff' | 'library.curveRises';
  readonly path: string;
  readonly params: Readonly<Record<string, number>>;
}

/** A pump curve begins at no flow with the shut-off head, has enough points and falls all the way; shares and sizes agree with each other. */
export function contentProblem(content: LibraryContent): ContentProblem | null {
  if (content.kind !== 'pump') return null;
  const { curve } = content;
  if (curve.length < leastPoints) return { code: 'library.fewPoints', path: 'curve', params: { count: curve.length, least: leastPoints } };
  try {
    const { flows } = pumpCurve(curve);
    return flows[0] === 0 ? null : { code: 'library.noShutOff', path: 'curve.0.flow', params: {} };
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    const point = Number(/\d+/.exec(error.path)?.[0] ?? 0);
    return { code: 'library.curveRises', path: `curve.${String(point)}`, params: { point: point + 1 } };
  }
}
