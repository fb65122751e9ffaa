import type { NewPhotoAddition, Photo, PhotoMark, PhotoPlace } from './photos.ts';

/** What is known of a photo before anything was added to it. */
export type PhotoCame = Pick<Photo, 'id' | 'takenAt' | 'itemKey' | 'part' | 'note' | 'marks'>;
export type PhotoAdded = NewPhotoAddition & { readonly by: string | null };

/** Marks that were laid over a photo in one go. */
export interface MarkSet {
  readonly id: string;
  readonly marks: readonly PhotoMark[];
  readonly at: string;
  /** Null for those it came with, and while they are on this phone only. */
  readonly by: string | null;
  readonly hidden: boolean;
}

export interface PhotoAsIs extends PhotoPlace {
  /** Every set in the order of drawing, the hidden ones too. */
  readonly sets: readonly MarkSet[];
  /** What is drawn now. */
  readonly marks: readonly PhotoMark[];
  readonly note: string;
}

/** A photo with all that was added to it, whatever the order of arrival: marks and words come together, the later place counts. */
export function photoAsIs(photo: PhotoCame, additions: readonly PhotoAdded[]): PhotoAsIs {
  const added = [...new Map(additions.map((one) => [one.id, one])).values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1));
  const hidden = new Set(added.flatMap(({ hides }) => hides));
  const drawn = [{ id: photo.id, marks: photo.marks, at: photo.takenAt, by: null }, ...added.map(({ id, marks, at, by }) => ({ id, marks, at, by }))];
  const sets = drawn.filter(({ marks }) => marks.length > 0).map((set) => ({ ...set, hidden: hidden.has(set.id) }));
  const place = added.findLast((one) => one.place !== null)?.place ?? { itemKey: photo.itemKey, part: photo.part, point: null };
  const note = [photo.note, ...added.map((one) => one.note)].filter((words) => words !== '').join('\n');
  return { ...place, sets, marks: sets.flatMap((set) => (set.hidden ? [] : set.marks)), note };
}
