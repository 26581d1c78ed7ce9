import { createStore, promisifyRequest } from 'idb-keyval';
import type { PlanFile } from '../../plan/schema.ts';

/** Where the browser keeps plans: a shelf of this page's own. Each plan lies there twice over: what a list tells of it,
 *  and the file, so that a list of two hundred reads no file. What comes back may be of an older version or broken, and
 *  is for the reader of plans to judge. Each function is one transaction: it happens as a whole or not at all. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  readonly rooms: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
}

/** What lies on the shelf under an id, unread. */
export interface KeptEntry {
  readonly id: string;
  readonly about: unknown;
  readonly file: unknown;
}

export const shelf = createStore('screed-bays', 'plans');
const lastKey = 'last';
export const aboutKey = (id: string) => `about/${id}`;
export const fileKey = (id: string) => `file/${id}`;

/** Puts a plan on the shelf, as the last that was on the board. */
export async function shelfPut(about: Kept, file: PlanFile): Promise<void> {
  await shelf('readwrite', (store) => {
    store.put(about, aboutKey(about.id));
    store.put(file, fileKey(about.id));
    store.put(about.id, lastKey);
    return promisifyRequest(store.transaction);
  });
}

/** The sheet on the board is one that lies there already as it is. */
export async function shelfMark(id: string): Promise<void> {
  await shelf('readwrite', (store) => {
    store.put(id, lastKey);
    return promisifyRequest(store.transaction);
  });
}

/** The id of the sheet that was on the board last; null where there was none. */
export async function shelfLast(): Promise<string | null> {
  const id: unknown = await shelf('readonly', (store) => promisifyRequest(store.get(lastKey)));
  return typeof id === 'string' ? id : null;
}

/** @returns null where nothing lies there */
export async function shelfRead(id: string): Promise<KeptEntry | null> {
  const entry = await shelf('readonly', (store) => entryGet(store, id));
  return entry.file === undefined ? null : entry;
}

export async function entryGet(store: IDBObjectStore, id: string): Promise<KeptEntry> {
  const [about, file] = await Promise.all(
    [aboutKey(id), fileKey(id)].map((key) => promisifyRequest<unknown>(store.get(key))),
  );
  return { id, about, file };
}
