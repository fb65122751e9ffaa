/** The token of a link, which stands behind `#`; null when there is none. */
export const tokenOf = (hash: string): string | null => /^#?([A-Za-z0-9_-]{43})$/.exec(hash)?.[1] ?? null;
