import { useEffect, useState } from 'react';

/** How long the page rests before what can wait is begun [ms] (ours). */
const restsFor = 1200;

/** False until the page has had time for what comes first, from the moment that it was there. */
export function useRest(ready: boolean): boolean {
  const [rested, setRested] = useState(false);
  useEffect(() => {
    if (!ready) return undefined;
    const timer = setTimeout(() => setRested(true), restsFor);
    return () => clearTimeout(timer);
  }, [ready]);
  return rested;
}
