import type { UploadState } from '@yardfall/contracts';
import type { Response } from 'express';

/** The protocol reads these headers; the JSON says the same. */
export function tell(response: Response, state: UploadState): UploadState {
  response.setHeader('Upload-Offset', String(state.offset)).setHeader('Upload-Length', String(state.length)).setHeader('Upload-Expires', new Date(state.expiresAt).toUTCString());
  return state;
}
