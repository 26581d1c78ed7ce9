import type { Writable } from 'node:stream';

/** A line on standard error while many plans are done. */
export interface Progress {
  step(): void;
  /** Takes the line away, so that a problem can be printed in its place. */
  clear(): void;
}

/** A terminal says that it is one. */
export type ProgressStream = Writable & { readonly isTTY?: boolean };

/** From so many plans a terminal shows a line, and rewrites it no sooner than after the pause. */
const fewestOnTerminal = 200;
const pauseMs = 100;

/** From so many plans a log gets a line for every tenth of them. */
const fewestInLog = 1000;
const logLines = 10;

export function progressOf(count: number, stream: ProgressStream): Progress {
  let done = 0;
  let shown = false;
  let last = Date.now();
  const clear = () => {
    if (shown) stream.write('\r\u001b[K');
    shown = false;
  };
  const text = () => `${done} of ${count} plans done`;
  const onTerminal = () => {
    if (count < fewestOnTerminal || Date.now() - last < pauseMs) return;
    last = Date.now();
    clear();
    stream.write(text());
    shown = true;
  };
  const inLog = () => {
    if (count >= fewestInLog && done % Math.ceil(count / logLines) === 0) stream.write(`${text()}\n`);
  };
  return {
    step() {
      done++;
      if (done < count) (stream.isTTY ? onTerminal : inLog)();
    },
    clear,
  };
}
