import { upgradeDocument, type DesignDocument } from '@yardfall/calc';

/** A design document as it is stored, in the present version's shape. The stored bytes and their hash stay as they are. */
export function storedDocument(bytes: Uint8Array): DesignDocument {
  return upgradeDocument(JSON.parse(Buffer.from(bytes).toString('utf8'))) as DesignDocument;
}
