import type { QueuedFact } from './queued-fact.ts';

export interface KeptPhoto {
  /** hash of the file as it was taken */
  readonly hash: string;
  readonly file: Blob;
  /** hash under which the server keeps it; null while it has not got it */
  readonly stored: string | null;
}

const FACTS = 'facts';
const PHOTOS = 'photos';

let opening: Promise<IDBDatabase> | undefined;

function opened(): Promise<IDBDatabase> {
  opening ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open('seatwell', 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore(FACTS, { keyPath: 'eventId' });
      request.result.createObjectStore(PHOTOS, { keyPath: 'hash' });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('The device gives no storage.'));
  });
  opening.catch(() => {
    opening = undefined;
  });
  return opening;
}

/**
 * Runs one transaction that is on the disk when it is done (`strict`): a flat battery a moment later loses nothing.
 * @throws DOMException when the device gives no storage, or it is full
 */
async function transact<Result>(
  store: typeof FACTS | typeof PHOTOS,
  mode: IDBTransactionMode,
  work: (store: IDBObjectStore) => IDBRequest<Result>,
): Promise<Result> {
  const database = await opened();
  return new Promise<Result>((resolve, reject) => {
    const transaction = database.transaction(store, mode, { durability: 'strict' });
    const request = work(transaction.objectStore(store));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error ?? new Error('The device did not keep it.'));
  });
}

/** Every fact on this device, whoever said it. */
export const keptFacts = (): Promise<QueuedFact[]> =>
  transact<QueuedFact[]>(FACTS, 'readonly', (store) => store.getAll() as IDBRequest<QueuedFact[]>);
export const keepFact = (fact: QueuedFact): Promise<unknown> =>
  transact(FACTS, 'readwrite', (store) => store.put(fact));
export const dropFact = (eventId: string): Promise<unknown> =>
  transact(FACTS, 'readwrite', (store) => store.delete(eventId));

export const keptPhoto = (hash: string): Promise<KeptPhoto | undefined> =>
  transact<KeptPhoto | undefined>(PHOTOS, 'readonly', (store) => store.get(hash) as IDBRequest<KeptPhoto | undefined>);
export const keepPhoto = (photo: KeptPhoto): Promise<unknown> =>
  transact(PHOTOS, 'readwrite', (store) => store.put(photo));
export const dropPhoto = (hash: string): Promise<unknown> =>
  transact(PHOTOS, 'readwrite', (store) => store.delete(hash));
