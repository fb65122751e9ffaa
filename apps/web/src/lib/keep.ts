const prefix = 'yardfall.';

/** Small things kept on this device. A browser may refuse storage (private mode); the page works without it. */
export function keep(name: string, value: unknown): boolean {
  try {
    localStorage.setItem(prefix + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

export function kept(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(prefix + name) ?? 'null');
  } catch {
    return null;
  }
}
