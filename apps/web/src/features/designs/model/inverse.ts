import { valueAt, type DraftOperation } from '@yardfall/contracts';

/** The operation that takes another one back, judged on the document before it; null when there is nothing to take back to. */
export function inverseOf(document: unknown, operation: DraftOperation): DraftOperation | null {
  switch (operation.kind) {
    case 'replace': {
      const before = valueAt(document, operation.path);
      return before === undefined ? null : { ...operation, value: before as typeof operation.value };
    }
    case 'connect': {
      const before = valueAt(document, ['system', 'parts', `@${operation.part}`, 'drainsTo']);
      return { ...operation, drainsTo: typeof before === 'string' ? before : null };
    }
    case 'remove': {
      const before = valueAt(document, operation.path);
      return before === undefined ? null : { kind: 'add', path: [...operation.path.slice(0, -1), '-'], value: before as never };
    }
    case 'add': {
      const id = typeof operation.value === 'object' && operation.value !== null && 'id' in operation.value ? operation.value.id : null;
      return typeof id === 'string' ? { kind: 'remove', path: [...operation.path.slice(0, -1), `@${id}`] } : null;
    }
  }
}

/** Takes back a group: each judged on the document as it stood before it, last first. */
export function inversesOf<T>(document: T, operations: readonly DraftOperation[], apply: (document: T, operations: readonly DraftOperation[]) => T): DraftOperation[] {
  const back: DraftOperation[] = [];
  let here = document;
  for (const operation of operations) {
    const inverse = inverseOf(here, operation);
    if (inverse) back.unshift(inverse);
    here = apply(here, [operation]);
  }
  return back;
}
