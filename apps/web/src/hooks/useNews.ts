import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';

/** The stream opens when the page has come to rest [ms] (ours): what the reader waits for comes first. */
const restsFor = 5_000;

/** The page of a member is kept to what the office says, and so is the code that does it: after what the page began with. */
export function useNews(member: boolean): void {
  const queries = useQueryClient();
  useEffect(() => {
    if (!member) return undefined;
    let stop: () => void = () => undefined;
    let over = false;
    const timer = setTimeout(() => {
      // Without a network the page is as it was; the next one that opens listens.
      import('../lib/news.ts').then(({ keepUp }) => { if (!over) stop = keepUp(queries); }).catch(() => undefined);
    }, restsFor);
    return () => {
      over = true;
      clearTimeout(timer);
      stop();
    };
  }, [member, queries]);
}
