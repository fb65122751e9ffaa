/** As much of IndexedDB as the outbox needs, with promises. */
export interface Store {
  readonly get: (key: IDBValidKey) => Promise<unknown>;
  readonly all: () => Promise<unknown[]>;
  readonly put: (value: unknown, key?: IDBValidKey) => Promise<IDBValidKey>;
  readonly remove: (key: IDBValidKey) => Promise<unknown>;
  readonly clear: () => Promise<unknown>;
}

const stores = { outbox: { keyPath: 'at', autoIncrement: true }, devices: {}, answers: {} } as const;
export type StoreName = keyof typeof stores;

let opened: Promise<IDBDatabase> | null = null;

/** Runs `work` in one transaction over these stores: all of it is kept, or none. It may await nothing but the stores. */
export async function inStores<const N extends StoreName, T>(names: readonly N[], mode: 'readonly' | 'readwrite', work: (at: Record<N, Store>) => Promise<T>): Promise<T> {
  // On the disk before anybody is told that it is kept, also when the battery falls out.
  const transaction = (await database()).transaction([...names], mode, { durability: 'strict' });
  const ended = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error('the phone did not keep it'));
  });
  const at = Object.fromEntries(names.map((name) => [name, storeOf(transaction.objectStore(name))])) as Record<N, Store>;
  const worked = work(at).catch((error: unknown) => {
    // What was put before the fault goes as well; after a fault of the store itself nothing is left to undo.
    if (transaction.error === null) transaction.abort();
    throw error;
  });
  const [result] = await Promise.all([worked, ended]);
  return result;
}

function database(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('yardfall', 2);
    request.onupgradeneeded = () => {
      for (const [name, options] of Object.entries(stores)) {
        if (!request.result.objectStoreNames.contains(name)) request.result.createObjectStore(name, options);
      }
    };
    request.onsuccess = () => {
      // Another tab with a newer page must not be kept waiting.
      request.result.onversionchange = () => {
        request.result.close();
        opened = null;
      };
      resolve(request.result);
    };
    request.onerror = () => {
      opened = null;
      reject(request.error ?? new Error('the phone keeps nothing'));
    };
  });
  return opened;
}

function storeOf(store: IDBObjectStore): Store {
  return {
    get: (key) => settled(store.get(key)),
    all: () => settled(store.getAll()),
    put: (value, key) => settled(key === undefined ? store.put(value) : store.put(value, key)),
    remove: (key) => settled(store.delete(key)),
    clear: () => settled(store.clear()),
  };
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the phone did not answer'));
  });
}
