import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { measuredStorm, notice, powerCut, protectedStorm, withSystem } from './outcome.ts';
import { sheets } from './sheets.ts';
import { asItIs, gravity, oldDrains, opening, referral } from './site.ts';
import { basins, channels, dryWells, grates, gutters, outlets, pipes, pumps, roofLines, swales, underdrains, wellRuns } from './system.ts';
import type { Ground, Paragraph, Reader } from './tell.ts';

export interface ExplainOptions extends Reader {
  /** plain: what it means; trade: every formula with its values and source besides. */
  readonly level: 'plain' | 'trade';
}

const topics = [oldDrains, asItIs, gravity, gutters, roofLines, grates, channels, underdrains, pipes, swales, basins, pumps, outlets, dryWells, wellRuns, withSystem, measuredStorm, protectedStorm, powerCut] as const;

/** A calculation in words, made from its results: each paragraph with its numbers and where each of them stands. */
export function explain(document: DesignDocument, evaluation: Evaluation, options: ExplainOptions): Paragraph[] {
  const ground: Ground = { ...document, ...evaluation };
  const reader: Reader = { language: options.language, units: options.units };
  const referred = referral(ground, reader);
  const body = referred.length > 0 ? [...referred, ...asItIs(ground, reader)] : topics.flatMap((say) => say(ground, reader));
  const worked = options.level === 'trade' ? sheets(ground, reader) : [];
  return [opening(ground, reader), ...body, ...worked, notice(ground, reader)];
}
