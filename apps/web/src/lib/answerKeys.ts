/** Under this key stands whose answers a device keeps. */
export const ownerKey = 'owner';

export function answerKey(id: string, input: object): string {
  const { params, query }: { readonly params?: unknown; readonly query?: unknown } = input;
  return JSON.stringify([id, params ?? null, query ?? null]);
}
