import { DocumentParseError, parseDesignDocument, type BodyInput, type designs } from '@yardfall/contracts';

type Document = NonNullable<BodyInput<typeof designs.create>['document']>;
export type ReadFile = { readonly ok: true; readonly document: Document } | { readonly ok: false; readonly code: string; readonly path: string };

/** A design document from a file, or the place in it that cannot be read. */
export async function readDocumentFile(file: File): Promise<ReadFile> {
  try {
    const { document } = await parseDesignDocument(await file.text());
    return { ok: true, document: document as unknown as Document };
  } catch (error) {
    if (error instanceof DocumentParseError) return { ok: false, code: error.code, path: error.path };
    throw error;
  }
}
