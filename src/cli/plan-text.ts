import { readFileSync, statSync } from 'node:fs';
import { isPaper, noPlanWords, paperIsLocked, planTextIn } from '../documents/plan-data.ts';

export type FileReading =
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'unread'; readonly message: string };

/** More than any plan has, and well within what fits into memory: a million points take 20 MB. */
const mostMegabytes = 200;

/** The text of a plan's file, or of the plan inside a paper, or why it could not be read. */
export function planText(path: string): FileReading {
  try {
    const about = statSync(path);
    if (about.isDirectory()) return { kind: 'unread', message: 'is a folder' };
    if (about.isCharacterDevice() || about.isBlockDevice()) return { kind: 'unread', message: 'is a device' };
    if (about.size > mostMegabytes * 1e6) return { kind: 'unread', message: `is larger than ${mostMegabytes} MB` };
    const bytes = readFileSync(path);
    return isPaper(bytes) ? paperText(bytes) : utf8Text(bytes);
  } catch (error) {
    return { kind: 'unread', message: systemMessage(error) };
  }
}

const lockedWords = 'is locked with a password: save it without one, and give that';

function paperText(bytes: Uint8Array): FileReading {
  const text = planTextIn(bytes);
  if (text !== null) return { kind: 'text', text };
  return { kind: 'unread', message: paperIsLocked(bytes) ? lockedWords : noPlanWords };
}

function utf8Text(bytes: Uint8Array): FileReading {
  try {
    return { kind: 'text', text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { kind: 'unread', message: 'is not text in UTF-8' };
  }
}

const systemMessages: Readonly<Record<string, string>> = {
  ENOENT: 'does not exist',
  ENOTDIR: 'does not exist',
  EISDIR: 'is a folder',
  EACCES: 'may not be opened: permission denied',
  EPERM: 'may not be opened: permission denied',
  ELOOP: 'is a link that leads back to itself',
  ENAMETOOLONG: 'has too long a name',
  ENOSPC: 'does not fit on the disk',
  EEXIST: 'exists and is not a folder',
  EROFS: 'cannot be written: the disk is read-only',
};

/** What the system said, in words. Anything but a system's error is a fault of ours and goes on. */
export function systemMessage(error: unknown): string {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') throw error;
  return systemMessages[error.code] ?? `cannot be used: ${error.code}`;
}
