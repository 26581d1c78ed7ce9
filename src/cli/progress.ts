/** A line on standard error while many plans are done. */
export interface Progress {
  step(): void;
  /** Takes the line away, so that a problem can be printed in its place. */
  clear(): void;
}

const fewestPlans = 200;
/** A terminal rewrites one line; a log gets a line now and then. */
const terminalPauseMs = 100;
const logPauseMs = 5000;

export function progressOf(count: number, stream: NodeJS.WriteStream): Progress {
  let done = 0;
  let shown = false;
  let last = Date.now();
  const clear = () => {
    if (shown) stream.write('\r\u001b[K');
    shown = false;
  };
  return {
    step() {
      done++;
      if (count < fewestPlans || done === count) return;
      if (Date.now() - last < (stream.isTTY ? terminalPauseMs : logPauseMs)) return;
      last = Date.now();
      if (stream.isTTY) clear();
      stream.write(`${done} of ${count} plans done${stream.isTTY ? '' : '\n'}`);
      shown = stream.isTTY;
    },
    clear,
  };
}
