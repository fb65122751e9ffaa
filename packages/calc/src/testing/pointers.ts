/** What a JSON pointer points to; undefined where nothing is. */
export function pointed(root: unknown, pointer: string): unknown {
  let here = root;
  for (const word of pointer.split('/').slice(1)) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = (here as Readonly<Record<string, unknown>>)[word];
  }
  return here;
}

/** Every number below a value, with its pointer. */
export function numbersOf(value: unknown, path: string): { readonly path: string; readonly value: number }[] {
  if (typeof value === 'number') return [{ path, value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, item]) => numbersOf(item, `${path}/${key}`));
}
