import { portal, sha256Hex } from '@yardfall/contracts';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { call, urlOf } from '../../../lib/api.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { read } from '../../../lib/query.ts';

export function usePortal() {
  return useQuery(read(portal.read));
}

export interface ReadOffer {
  readonly text: string;
  /** Fingerprint of the bytes that this browser received; null where the page is not served over a secure connection. */
  readonly sha256: string | null;
}

/** The very bytes that are accepted, and their fingerprint worked out here. */
export function useOfferText(offerId: string) {
  return useQuery({ queryKey: [portal.offerBytes.id, offerId], queryFn: ({ signal }) => readOffer(offerId, signal) });
}

async function readOffer(offerId: string, signal: AbortSignal): Promise<ReadOffer> {
  const content: unknown = (await call(portal.offerBytes, { params: { offerId }, signal })).data;
  if (!(content instanceof Blob)) throw new ApiProblem('unreadableAnswer');
  const bytes = new Uint8Array(await content.arrayBuffer());
  return { text: new TextDecoder().decode(bytes), sha256: isSecureContext ? await sha256Hex(bytes) : null };
}

/** The answer is the whole page anew. */
export function useAccept() {
  const queries = useQueryClient();
  return useWrite(portal.accept, { onDone: (page) => queries.setQueryData(read(portal.read).queryKey, { data: page, etag: null }) });
}

export function photoAddress(photoId: string): string {
  return urlOf(portal.photo, { params: { photoId } });
}
