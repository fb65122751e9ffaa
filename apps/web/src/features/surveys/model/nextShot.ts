import { standingShots, type FieldBook, type PointRole, type Shot, type ShotKind } from './fieldBook.ts';

/** What to look at next. A point that has no name yet is named by the page, in the words of its role. */
export interface NextShot {
  readonly kind: ShotKind;
  readonly role: PointRole;
  readonly point: string | null;
  readonly why: 'start' | 'onTurn' | 'needed' | 'turn' | 'close' | 'more';
}

/** What a design needs, in the order in which one walks away from the house. */
const needed: readonly PointRole[] = ['sill', 'lowSpot', 'collectorInvert', 'outlet'];

const isRead = ({ kind }: Shot) => kind === 'intermediate' || kind === 'foresight' || kind === 'direct';

function missing(book: FieldBook): PointRole | null {
  const have = new Set(standingShots(book).filter(isRead).map(({ role }) => role));
  return needed.find((role) => !have.has(role)) ?? null;
}

const closing = (book: FieldBook): NextShot => ({ kind: book.mode === 'direct' ? 'direct' : 'foresight', role: 'floor', point: book.benchMark.name, why: 'close' });

/** The next shot; null once the book has been closed on its bench mark. */
export function nextShot(book: FieldBook): NextShot | null {
  const shots = standingShots(book);
  const last = shots.at(-1);
  const direct = book.mode === 'direct';
  if (last === undefined) return { kind: direct ? 'direct' : 'backsight', role: 'floor', point: book.benchMark.name, why: 'start' };
  if (last.point === book.benchMark.name && (last.kind === 'foresight' || (direct && shots.length > 1))) return null;
  if (last.kind === 'foresight') return { kind: 'backsight', role: 'other', point: last.point, why: 'onTurn' };
  const role = missing(book);
  return role === null ? closing(book) : { kind: direct ? 'direct' : 'intermediate', role, point: null, why: 'needed' };
}

/** What may be shot instead of what is next: a role, the closing shot, or a turning point. */
export function otherShot(book: FieldBook, asked: PointRole | 'turn' | 'close'): NextShot {
  const last = standingShots(book).at(-1);
  if (asked === 'close') return closing(book);
  if (asked === 'turn') return { kind: 'foresight', role: 'other', point: null, why: 'turn' };
  if (book.mode === 'direct') return { kind: 'direct', role: asked, point: null, why: 'more' };
  // After a closing shot the instrument has to be set up again before anything is read.
  if (last?.kind === 'foresight') return { kind: 'backsight', role: last.role, point: last.point, why: 'onTurn' };
  return { kind: 'intermediate', role: asked, point: null, why: 'more' };
}

/** A name that is not taken: `Outlet`, then `Outlet 2`. */
export function freeName(book: FieldBook, word: string): string {
  const taken = new Set(book.shots.map(({ point }) => point.toLocaleLowerCase()));
  if (!taken.has(word.toLocaleLowerCase()) && word.toLocaleLowerCase() !== book.benchMark.name.toLocaleLowerCase()) return word;
  for (let n = 2; ; n += 1) {
    const name = `${word} ${String(n)}`;
    if (!taken.has(name.toLocaleLowerCase())) return name;
  }
}
