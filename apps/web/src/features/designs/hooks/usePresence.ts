import { designs, type Presence } from '@yardfall/contracts';
import { useEffect, useRef, useState } from 'react';
import { call } from '../../../lib/api.ts';
import { hear } from '../../../lib/notices.ts';

/** An open page says every so often that it is there [ms]; the office forgets it after two and a half of these. */
const beat = 30_000;
/** The stream opens when the page has come to rest [ms]: what the reader waits for comes first. */
const rest = 5_000;

/** Who else has this draft open, and at which part; while somebody does, an edit that arrives at the office is told. A page that nobody looks at says nothing and is soon forgotten. */
export function usePresence(jobId: string, revisionId: string, part: string | null, onOthersEdit: () => void): readonly Presence[] {
  const [others, setOthers] = useState<readonly Presence[]>([]);
  const edited = useRef(onOthersEdit);
  const company = others.length > 0;
  useEffect(() => { edited.current = onOthersEdit; });

  useEffect(() => {
    if (!company) return undefined;
    return hear(({ topic, subjectId }) => { if (topic === 'design' && subjectId === revisionId) edited.current(); });
  }, [company, revisionId]);

  useEffect(() => {
    let over = false;
    const say = () => {
      if (document.visibilityState !== 'visible') return;
      call(designs.presence, { params: { jobId, revisionId }, body: { part, here: true } }).then(({ data }) => { if (!over) setOthers(data.others); }, () => undefined); // the draft is edited without it as well
    };
    say();
    const timer = setInterval(say, beat);
    let deaf: () => void = () => undefined;
    const listen = setTimeout(() => { deaf = hear(({ topic, subjectId }) => { if (topic === 'presence' && subjectId === revisionId) say(); }); }, rest);
    document.addEventListener('visibilitychange', say);
    return () => {
      over = true;
      clearInterval(timer);
      clearTimeout(listen);
      deaf();
      document.removeEventListener('visibilitychange', say);
    };
  }, [jobId, revisionId, part]);

  useEffect(() => () => {
    call(designs.presence, { params: { jobId, revisionId }, body: { part: null, here: false } }).catch(() => undefined); // issued meanwhile, or offline: it expires
  }, [jobId, revisionId]);

  return others;
}
