import type { DesignDocument } from '@yardfall/calc';
import { useEffect, useRef, useState } from 'react';
import type { GroundAnswer, GroundRequest } from '../model/plan/ground.worker.ts';

/** The ground that the spot levels with a place make, computed beside the page; while edits come faster than answers only the newest is asked. */
export function useGround(site: DesignDocument['site'], level: number | null, interval: number): GroundAnswer | null {
  const [answer, setAnswer] = useState<GroundAnswer | null>(null);
  const worker = useRef<Worker | null>(null);
  const queue = useRef<{ busy: boolean; next: GroundRequest | null; last: number }>({ busy: false, next: null, last: 0 });
  const placed = site.spotLevels.filter(({ position }) => position !== null).length;

  useEffect(() => {
    const made = new Worker(new URL('../model/plan/ground.worker.ts', import.meta.url), { type: 'module' });
    const waiting = { busy: false, next: null as GroundRequest | null, last: 0 };
    queue.current = waiting;
    made.onmessage = (event: MessageEvent<GroundAnswer>) => {
      setAnswer(event.data);
      waiting.busy = waiting.next !== null;
      if (waiting.next) made.postMessage(waiting.next);
      waiting.next = null;
    };
    worker.current = made;
    return () => made.terminate();
  }, []);

  useEffect(() => {
    if (!worker.current || placed < 3) return;
    const request: GroundRequest = { id: ++queue.current.last, site, level, interval };
    if (queue.current.busy) queue.current.next = request;
    else {
      queue.current.busy = true;
      worker.current.postMessage(request);
    }
  }, [site, level, interval, placed]);

  return placed < 3 ? null : answer;
}
