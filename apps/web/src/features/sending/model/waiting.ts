import { sha256Hex, type SentMeta } from '@yardfall/contracts';
import { v7 as uuidv7 } from 'uuid';

/** A photo or video that a customer chose, as this phone keeps it until the company has it. */
export interface WaitingFile {
  readonly meta: SentMeta;
  readonly name: string;
  readonly file: Blob;
  /** Error code with which it was refused for good; null while it waits. */
  readonly refused: string | null;
}

const store = 'files';

/** A database of its own: nothing of the members' app is opened here. */
function database(): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open('yardfall.sending', 1);
    request.onupgradeneeded = () => request.result.createObjectStore(store, { keyPath: 'meta.id' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the phone keeps nothing'));
  });
}

async function run<T>(mode: IDBTransactionMode, work: (files: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const db = await database();
  try {
    return await new Promise<T>((resolve, reject) => {
      const transaction = db.transaction(store, mode, { durability: 'strict' });
      const request = work(transaction.objectStore(store));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new Error('the phone did not keep it'));
    });
  } finally {
    db.close();
  }
}

/** Oldest first: ids grow with time. */
export const waitingFiles = (): Promise<WaitingFile[]> => run('readonly', (files) => files.getAll() as IDBRequest<WaitingFile[]>);
export const keepFile = (file: WaitingFile): Promise<unknown> => run('readwrite', (files) => files.put(file));
export const dropFile = (id: string): Promise<unknown> => run('readwrite', (files) => files.delete(id));

/** With its SHA-256, against which it is checked when it has arrived. The line says when and where. */
export async function waitingFrom(file: File, note: string): Promise<WaitingFile> {
  const bytes = await file.arrayBuffer();
  const takenAt = new Date(Math.min(file.lastModified, Date.now())).toISOString();
  const meta = { id: uuidv7(), sha256: await sha256Hex(new Uint8Array(bytes)), takenAt, note };
  // A copy, because a chosen file may be gone when the page is opened again.
  return { meta, name: file.name, file: new Blob([bytes], { type: file.type }), refused: null };
}
