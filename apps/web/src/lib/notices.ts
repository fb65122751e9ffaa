import { notices, type Notice } from '@yardfall/contracts';
import { urlOf } from './api.ts';

type Hear = (notice: Notice) => void;

const hearers = new Set<Hear>();
let source: EventSource | null = null;

/** Hears what the office says has changed, by one stream for the page, which is open only while somebody listens. */
export function hear(fn: Hear): () => void {
  hearers.add(fn);
  source ??= open();
  return () => {
    hearers.delete(fn);
    if (hearers.size > 0) return;
    source?.close();
    source = null;
  };
}

function open(): EventSource {
  const made = new EventSource(urlOf(notices.stream));
  made.addEventListener('notice', (event: MessageEvent<string>) => {
    const notice = JSON.parse(event.data) as Notice;
    for (const fn of hearers) fn(notice);
  });
  // Signed out, or a newer page of this browser has the stream: this one asks no more.
  for (const end of ['ended', 'replaced']) made.addEventListener(end, () => made.close());
  return made;
}
