/** How much of a photo the office has, by its id, from 0 to 1; of those that are being sent from this page. */
let shares: ReadonlyMap<string, number> = new Map();
const listeners = new Set<() => void>();

export function sentShares(): ReadonlyMap<string, number> {
  return shares;
}

export function onSentShares(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function tellShare(id: string, share: number): void {
  shares = new Map([...shares, [id, share]]);
  for (const listener of listeners) listener();
}
