import { notices, type Notice } from '@yardfall/contracts';
import { urlOf } from './api.ts';

type Hear = (notice: Notice) => void;

const hearers = new Set<Hear>();
const readers = new Set<() => void>();
let source: EventSource | null = null;

/**
 * Hears what the office says has changed, by one stream for the page, which is open only while somebody listens.
 * @param onOpen told when a stream begins: what happened before it is not heard
 */
export function hear(fn: Hear, onOpen?: () => void): () => void {
  hearers.add(fn);
  if (onOpen) readers.add(onOpen);
  source ??= open();
  addEventListener('visibilitychange', reopen);
  return () => {
    hearers.delete(fn);
    if (onOpen) readers.delete(onOpen);
    if (hearers.size > 0) return;
    removeEventListener('visibilitychange', reopen);
    source?.close();
    source = null;
  };
}

/** A stream that was refused, or that a newer page took over, begins again when this page is looked at. */
function reopen(): void {
  if (document.visibilityState === 'visible' && source?.readyState === EventSource.CLOSED) source = open();
}

function open(): EventSource {
  const made = new EventSource(urlOf(notices.stream));
  made.addEventListener('ready', () => { for (const fn of readers) fn(); });
  made.addEventListener('notice', (event: MessageEvent<string>) => {
    const notice = JSON.parse(event.data) as Notice;
    for (const fn of hearers) fn(notice);
  });
  // Signed out, or a newer page of this browser has the stream: this one asks no more.
  for (const end of ['ended', 'replaced']) made.addEventListener(end, () => made.close());
  return made;
}
