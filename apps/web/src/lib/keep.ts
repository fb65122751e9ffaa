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

/** Whatever was kept under the name is no longer needed. */
export function forget(name: string): void {
  try {
    localStorage.removeItem(prefix + name);
  } catch {
    // what was never kept need not go
  }
}

export function kept(name: string): unknown {
  try {
    return JSON.parse(localStorage.getItem(prefix + name) ?? 'null');
  } catch {
    return null;
  }
}
