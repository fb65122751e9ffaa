import type { DesignDocument, Position } from '@yardfall/calc';
import type { BookStanding, FieldBook, Shot } from './fieldBook.ts';

/** The plan as this book sees it: what is drawn, with each pinned shot but the one in hand at its place and level. A spot level of the same name is the older one. */
export function withPins(document: DesignDocument, { shots }: Pick<FieldBook, 'shots'>, { levelOf }: Pick<BookStanding, 'levelOf'>, inHand: Pick<Shot, 'id' | 'point'>): DesignDocument {
  const pinned = shots.flatMap(({ id, point, pin, struck }) => {
    const level = levelOf(id);
    return pin === null || struck || level === null || id === inHand.id || point === inHand.point ? [] : [{ id, name: point, level, station: null, position: pin }];
  });
  const newer = new Set([inHand.point, ...pinned.map(({ name }) => name)]);
  return { ...document, site: { ...document.site, spotLevels: [...document.site.spotLevels.filter(({ name }) => !newer.has(name)), ...pinned] } };
}

/** A place as it is written down: to a tenth of a meter, which is less than a thumb. */
export function pinAt({ x, y }: Position): Position {
  const tenth = (value: number) => Math.round(value * 10) / 10;
  return { x: tenth(x), y: tenth(y) };
}
