import type { BandResult, DesignDocument, RankedSwing } from '@yardfall/calc';
import { isMessageCode } from '@yardfall/text';
import type { Text } from '../../../lib/reader.tsx';
import { nameOf } from './editWords.ts';

/** Less than this is not seen on a tape [m]: the twentieth of an inch. */
const unseen = 0.0254 / 20;

export interface SwingsShown {
  /** Inputs on which something hangs, with what hangs on them. */
  readonly deciding: readonly (RankedSwing & { readonly decides: NonNullable<RankedSwing['decides']> })[];
  /** What moves the answer so far that it is read, with its place in the ranking. */
  readonly rows: readonly { readonly swing: RankedSwing; readonly index: number }[];
  /** What moves nothing that can be measured, and decides nothing. */
  readonly still: readonly RankedSwing[];
}

export function swingsShown(band: BandResult): SwingsShown {
  const all = band.ranking.map((swing, index) => ({ swing, index }));
  const matters = ({ swing }: (typeof all)[number]): boolean => swing.decides !== null || swing.swing >= unseen;
  return {
    deciding: band.ranking.flatMap((swing) => (swing.decides === null ? [] : [{ ...swing, decides: swing.decides }])),
    rows: all.filter(matters), still: all.filter((one) => !matters(one)).map(({ swing }) => swing),
  };
}

/** An input as a reader names it. Runoff coefficients belong to a kind of surface, all others to a thing of the design. */
export function rankedName({ input, at }: RankedSwing, document: DesignDocument, { t, say }: Pick<Text, 't' | 'say'>): string {
  const surface = `designs.surface.${at ?? ''}`;
  const name = at === null ? '' : input === 'coefficient' && isMessageCode(surface) ? say(surface) : nameOf([document], at);
  return t(`decisions.input.${input}`, { name });
}
