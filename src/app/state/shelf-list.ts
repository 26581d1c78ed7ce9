import { promisifyRequest } from 'idb-keyval';
import { aboutKey, entryGet, fileKey, type Kept, type KeptEntry, shelf } from './shelf.ts';

/** The shelf as a whole: what a list of the kept plans tells and does. */

/** All keys of what lists tell: "0" comes after "/". */
const aboutStart = aboutKey('');
const aboutEnd = 'about0';

/** All that lies there, the newest first. */
export async function shelfList(): Promise<readonly Kept[]> {
  const [keys, abouts] = await shelf('readonly', (store) => {
    const range = IDBKeyRange.bound(aboutStart, aboutEnd);
    return Promise.all([promisifyRequest(store.getAllKeys(range)), promisifyRequest<unknown[]>(store.getAll(range))]);
  });
  return keys
    .map((key, i) => keptOf(String(key).slice(aboutStart.length), abouts[i]))
    .sort((a, b) => b.savedAt - a.savedAt);
}

/** What a list tells of an entry; of a broken one as much as can be told, so that it can be removed. */
export function keptOf(id: string, about: unknown): Kept {
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
    const entry = await entryGet(store, id);
    store.delete(aboutKey(id));
    store.delete(fileKey(id));
    await promisifyRequest(store.transaction);
    return entry;
  });
}

/** Puts back what was removed. @returns false where a newer state of the plan lies there by now, which stays */
export async function shelfPutBack({ id, about, file }: KeptEntry): Promise<boolean> {
  return shelf('readwrite', async (store) => {
    if ((await promisifyRequest(store.count(fileKey(id)))) > 0) return false;
    store.put(about, aboutKey(id));
    store.put(file, fileKey(id));
    await promisifyRequest(store.transaction);
    return true;
  });
}
