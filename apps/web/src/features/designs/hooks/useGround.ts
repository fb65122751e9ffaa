import type { DesignDocument } from '@yardfall/calc';
import { useEffect, useRef, useState } from 'react';
import { Newest } from '../../../lib/newest.ts';
import type { GroundAnswer, GroundRequest } from '../model/plan/ground.worker.ts';

/** The ground that the spot levels with a place make, computed beside the page. Null with fewer than three. */
export function useGround(site: DesignDocument['site'], level: number | null, interval: number): GroundAnswer | null {
  const [answer, setAnswer] = useState<GroundAnswer | null>(null);
  const worker = useRef<Newest<GroundRequest, GroundAnswer> | null>(null);
  const enough = site.spotLevels.filter(({ position }) => position !== null).length >= 3;

  useEffect(() => {
    const made = new Newest<GroundRequest, GroundAnswer>(new Worker(new URL('../model/plan/ground.worker.ts', import.meta.url), { type: 'module' }), setAnswer);
    worker.current = made;
    return () => made.end();
  }, []);

  useEffect(() => {
    if (enough) worker.current?.ask({ site, level, interval });
  }, [site, level, interval, enough]);

  return enough ? answer : null;
}
