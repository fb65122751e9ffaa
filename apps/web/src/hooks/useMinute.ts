import { useEffect, useState } from 'react';

const minute = 60_000;

/**
 * The time [ms], anew every minute and when the page is looked at again: a photo grows old and a ticket runs out also where nobody can be asked.
 * What was told a moment ago is never looked at from before: `told` is when [ms].
 */
export function useMinute(told = 0): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const tick = () => setNow(Date.now());
    const timer = setInterval(tick, minute);
    document.addEventListener('visibilitychange', tick);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', tick);
    };
  }, []);
  return Math.max(now, told);
}
