import type { DraftOperation } from '@yardfall/contracts';

export interface LastThere {
  readonly last: DraftOperation;
  /** How many edits were made there, this one included. */
  readonly count: number;
}

const placeOf = (operation: DraftOperation): string => (operation.kind === 'connect' ? `${operation.part}>` : `${operation.kind} ${operation.path.join('.')}`);

/** The last edit at each place, in the order in which the places were first touched; every addition is one of its own. */
export function atEachPlace(operations: readonly DraftOperation[]): LastThere[] {
  const places = new Map<string, LastThere>();
  operations.forEach((operation, at) => {
    const place = operation.kind === 'add' ? `add ${String(at)}` : placeOf(operation);
    places.set(place, { last: operation, count: (places.get(place)?.count ?? 0) + 1 });
  });
  return [...places.values()];
}
