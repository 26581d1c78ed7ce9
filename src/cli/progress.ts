import type { Writable } from 'node:stream';
import { oneLine } from '../documents/words.ts';
import type { JobStep } from './plan-job.ts';

/** A line on standard error while many plans, or one that takes long, are done. */
export interface Progress {
  step(): void;
  /** So far is a plan that is under way. */
  within(step: JobStep): void;
  /** Takes the line away, so that a problem can be printed in its place. */
  clear(): void;
}

/** A terminal says that it is one. */
export type ProgressStream = Writable & { readonly isTTY?: boolean };

/** From so many plans a terminal shows a line, and rewrites it no sooner than after the pause. */
const fewestOnTerminal = 200;
const pauseMs = 100;

/** A plan under way so long has a line on a terminal. */
const longMs = 1000;

/** From so many plans a log gets a line for every tenth of them. */
const fewestInLog = 1000;
const logLines = 10;

export function progressOf(count: number, stream: ProgressStream): Progress {
  let done = 0;
  let shown = false;
  let last = Date.now();
  let begun = last;
  const clear = () => {
    if (shown) stream.write('\r\u001b[K');
    shown = false;
  };
  const text = () => `${done} of ${count} plans done`;
  const show = (line: string) => {
    if (Date.now() - last < pauseMs) return;
    last = Date.now();
    clear();
    stream.write(line);
    shown = true;
  };
  const onTerminal = () => {
    if (count >= fewestOnTerminal) show(text());
  };
  const inLog = () => {
    if (count >= fewestInLog && done % Math.ceil(count / logLines) === 0) stream.write(`${text()}\n`);
  };
  return {
    step() {
      done++;
      begun = Date.now();
      if (done < count) (stream.isTTY ? onTerminal : inLog)();
    },
    within({ file, doing, share }) {
      if (stream.isTTY && Date.now() - begun >= longMs) show(oneLine(`${file}: ${doing} ${Math.floor(100 * share)} %`));
    },
    clear,
  };
}
