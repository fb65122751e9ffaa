import { DomainError } from './errors.ts';

/** Where a page ended: the sort values of its last row. Opaque to the caller. */
export function encodeCursor(values: readonly string[]): string {
  return Buffer.from(JSON.stringify(values), 'utf8').toString('base64url');
}

export function decodeCursor(cursor: string, length: number): string[] {
  try {
    const values: unknown = JSON.parse(Buffer.from(cursor, 'base64url').toString('utf8'));
    if (Array.isArray(values) && values.length === length && values.every((value): value is string => typeof value === 'string' && value.length < 200)) return values;
  } catch (error) {
    throw new DomainError('request.invalid', {}, [{ path: 'query.cursor', message: 'is not a cursor of this list' }], { cause: error });
  }
  throw new DomainError('request.invalid', {}, [{ path: 'query.cursor', message: 'is not a cursor of this list' }]);
}

/** A cursor over (instant, id), the order of most lists. */
export function decodeTimeCursor(cursor: string): { at: Date; id: string } {
  const [time = '', id = ''] = decodeCursor(cursor, 2);
  const at = new Date(time);
  if (Number.isNaN(at.getTime()) || !/^[0-9a-f-]{36}$/.test(id)) {
    throw new DomainError('request.invalid', {}, [{ path: 'query.cursor', message: 'is not a cursor of this list' }]);
  }
  return { at, id };
}

/** Reads one row more than the page to know whether another follows. */
export function pageOf<R, T>(rows: readonly R[], limit: number, present: (row: R) => T, cursorOf: (row: R) => readonly string[]): { items: T[]; next: string | null } {
  const shown = rows.slice(0, limit);
  const last = shown.at(-1);
  return { items: shown.map(present), next: rows.length > limit && last !== undefined ? encodeCursor(cursorOf(last)) : null };
}
