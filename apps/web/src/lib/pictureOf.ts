import { onOutbox, outboxNow, type OutboxPhoto } from './outbox.ts';

const pictures = new Map<string, string>();
onOutbox(letGo);

/** Address of a photo that is on this phone only; let go when the photo has left. */
export function pictureOf({ id, file }: OutboxPhoto): string {
  const known = pictures.get(id) ?? URL.createObjectURL(file);
  pictures.set(id, known);
  return known;
}

function letGo(): void {
  const here = new Set(outboxNow().map(({ id }) => id));
  for (const [id, url] of [...pictures].filter(([one]) => !here.has(one))) {
    pictures.delete(id);
    URL.revokeObjectURL(url);
  }
}
