import { Memo, ReadDocuments, type Reads } from './reads.ts';
import type { Digits, OptionSpace } from './space.ts';

/**
 * Which combinations of a frame may be bounded together: those whose pumps and roofs keep order there. A choice that does not, in this frame,
 * parts them.
 */
export class Orders {
  private readonly space: OptionSpace;
  private readonly ratings: Memo<boolean>;
  private readonly diversions: readonly (Memo<boolean> | null)[];

  constructor(space: OptionSpace, reads: Reads) {
    const documents = new ReadDocuments(space, reads);
    this.space = space;
    this.ratings = new Memo(reads, (digits) => space.ratingsKeepOrder(documents.of(digits)));
    this.diversions = space.roles.map((role, choice) => (role !== 'diversion' ? null : new Memo(reads, (digits) => {
      const [without, diverted] = [0, 1].map((own) => documents.of(digits.map((digit, other) => (other === choice ? own : digit))));
      return space.divertsIn(choice, without!, diverted!);
    })));
  }

  /** The digits in which two combinations must agree to be bounded together, beside those of the frame. */
  groupOf(digits: Digits): string {
    const { roles } = this.space;
    const ordered = this.ratings.get(digits);
    return digits.map((digit, choice) => {
      const parts = roles[choice] === 'rating' ? !ordered : this.diversions[choice]?.get(digits) === false;
      return parts ? String(digit) : '';
    }).join(' ');
  }
}
