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
  readonly about: unknown;
  readonly file: unknown;
}

const shelf = createStore('screed-bays', 'plans');
const lastKey = 'last';
const aboutKey = (id: string) => `about/${id}`;
const fileKey = (id: string) => `file/${id}`;
/** All keys of what lists tell: "0" comes after "/". */
const aboutStart = 'about/';
const aboutEnd = 'about0';

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
  const [about, file] = await shelf('readonly', (store) => entryGet(store, id));
  return file === undefined ? null : { about, file };
}

function entryGet(store: IDBObjectStore, id: string): Promise<unknown[]> {
  return Promise.all([aboutKey(id), fileKey(id)].map((key) => promisifyRequest<unknown>(store.get(key))));
}

/** All that lies there, the newest first. */
export async function shelfList(): Promise<readonly Kept[]> {
  const [keys, abouts] = await shelf('readonly', (store) => {
    const range = IDBKeyRange.bound(aboutStart, aboutEnd);
    return Promise.all([promisifyRequest(store.getAllKeys(range)), promisifyRequest<unknown[]>(store.getAll(range))]);
  });
  return keys
    .map((key, i) => keptFrom(String(key).slice(aboutStart.length), abouts[i]))
    .sort((a, b) => b.savedAt - a.savedAt);
}

/** What a list tells of an entry; of a broken one as much as can be told, so that it can be removed. */
export function keptFrom(id: string, about: unknown): Kept {
  const { name, rooms, savedAt } = (typeof about === 'object' && about !== null ? about : {}) as Record<
    string,
    unknown
  >;
  return {
    id,
    name: typeof name === 'string' ? name : 'Plan that cannot be read',
    rooms: typeof rooms === 'number' ? rooms : 0,
    savedAt: typeof savedAt === 'number' && Number.isFinite(savedAt) ? savedAt : 0,
  };
}

/** Takes a plan off the shelf. @returns what lay there, to be put back */
export async function shelfRemove(id: string): Promise<KeptEntry> {
  return shelf('readwrite', async (store) => {
    const [about, file] = await entryGet(store, id);
    store.delete(aboutKey(id));
    store.delete(fileKey(id));
    await promisifyRequest(store.transaction);
    return { about, file };
  });
}

/** Puts back what was removed. @returns false where a newer state of the plan lies there by now, which stays */
export async function shelfPutBack(id: string, { about, file }: KeptEntry): Promise<boolean> {
  return shelf('readwrite', async (store) => {
    if ((await promisifyRequest(store.count(fileKey(id)))) > 0) return false;
    store.put(about, aboutKey(id));
    store.put(file, fileKey(id));
    await promisifyRequest(store.transaction);
    return true;
  });
}
