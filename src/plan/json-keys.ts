/** An object or list that is open while a text is gone through. */
interface Level {
  /** The keys so far; null in a list. */
  readonly keys: Set<string> | null;
  /** Where in it the text stands: the last key, or the number of the entry. */
  at: string | number;
  /** Whether the next string is a key. */
  wantsKey: boolean;
}

const quote = '"'.charCodeAt(0);
const backslash = '\\'.charCodeAt(0);

/** The first key that stands twice in one object: `JSON.parse` keeps the last of them and says nothing. Goes through the text once.
 *  @param text that `JSON.parse` has read
 *  @returns the path to the key, itself the last of it; null where each stands once. Example: `{"a":[{"b":1,"\u0062":2}]}` -> a, 0, b */
export function jsonKeyTwice(text: string): readonly (string | number)[] | null {
  const open: Level[] = [];
  let level: Level | undefined;
  for (let i = 0; i < text.length; i++) {
    switch (text[i]) {
      case '"': {
        const end = stringEnd(text, i);
        if (level?.keys && level.wantsKey) {
          const key: string = JSON.parse(text.slice(i, end));
          level.at = key;
          if (level.keys.has(key)) return open.map(({ at }) => at);
          level.keys.add(key);
          level.wantsKey = false;
        }
        i = end - 1;
        break;
      }
      case '{':
      case '[':
        level = text[i] === '{' ? { keys: new Set(), at: '', wantsKey: true } : { keys: null, at: 0, wantsKey: false };
        open.push(level);
        break;
      case '}':
      case ']':
        open.pop();
        level = open.at(-1);
        break;
      case ',':
        if (level) levelStep(level);
    }
  }
  return null;
}

function levelStep(level: Level): void {
  if (typeof level.at === 'number') level.at++;
  else level.wantsKey = true;
}

/** Behind the closing quote. */
function stringEnd(text: string, start: number): number {
  let at = start + 1;
  for (let code = text.charCodeAt(at); code !== quote; code = text.charCodeAt(at)) at += code === backslash ? 2 : 1;
  return at + 1;
}
