import { useEffect, useSyncExternalStore } from 'react';
import { keep, kept } from '../lib/keep.ts';

const listeners = new Set<() => void>();
let now: boolean | null = null;

/** Whether this device shows black on white in big type, for bright sun. */
function isSunny(): boolean {
  now ??= kept('sun') === true;
  return now;
}

export function setSun(on: boolean): void {
  now = on;
  keep('sun', on);
  for (const listener of listeners) listener();
}

export function useSun(): boolean {
  return useSyncExternalStore((listener) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  }, isSunny);
}

/** Puts it on the page, wherever in the app a person is. */
export function useSunOnPage(): void {
  const sun = useSun();
  useEffect(() => {
    const { dataset } = document.documentElement;
    if (sun) dataset.sun = 'on';
    return () => { delete dataset.sun; };
  }, [sun]);
}
