import { useEffect } from 'react';

/** Goes to the heading that the address names, once it is on the page; bodies above it may still grow while they load. */
export function useHashScroll(ready: boolean): void {
  useEffect(() => {
    const id = decodeURIComponent(location.hash.slice(1));
    const target = ready && id ? document.getElementById(id) : null;
    if (!target) return undefined;
    target.focus({ preventScroll: true });
    const stay = () => target.scrollIntoView({ block: 'start' });
    const observer = new ResizeObserver(stay);
    observer.observe(document.body);
    const release = () => observer.disconnect();
    const timer = setTimeout(release, 3000);
    for (const kind of ['wheel', 'touchstart', 'keydown', 'pointerdown'] as const) addEventListener(kind, release, { once: true, passive: true });
    stay();
    return () => {
      clearTimeout(timer);
      release();
    };
  }, [ready]);
}
