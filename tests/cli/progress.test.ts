import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { progressOf } from '../../src/cli/progress.ts';
import { textStream } from './run.ts';

function kept(isTTY: boolean) {
  const { stream, parts } = textStream();
  return { stream: Object.assign(stream, { isTTY }), parts };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

test('a plan that takes long has a line on a terminal, rewritten in place and taken away', () => {
  const { stream, parts } = kept(true);
  const progress = progressOf(1, stream);
  progress.within({ file: 'hall.json', doing: 'analysis', share: 0.1 });
  expect(parts).toEqual([]);
  vi.advanceTimersByTime(1000);
  progress.within({ file: 'hall.json', doing: 'analysis', share: 0.639 });
  expect(parts).toEqual(['hall.json: analysis 63 %']);
  vi.advanceTimersByTime(99);
  progress.within({ file: 'hall.json', doing: 'papers', share: 0.1 });
  expect(parts).toHaveLength(1);
  vi.advanceTimersByTime(1);
  progress.within({ file: 'hall.json', doing: 'papers', share: 0.2 });
  progress.clear();
  expect(parts.slice(1)).toEqual(['\r\u001b[K', 'hall.json: papers 20 %', '\r\u001b[K']);
});

test('the next plan begins its own second, and a name cannot move the cursor', () => {
  const { stream, parts } = kept(true);
  const progress = progressOf(2, stream);
  vi.advanceTimersByTime(5000);
  progress.step();
  progress.within({ file: 'b.json', doing: 'papers', share: 0.5 });
  expect(parts).toEqual([]);
  vi.advanceTimersByTime(1000);
  progress.within({ file: 'b\n\u001b[2J.json', doing: 'papers', share: 0.5 });
  expect(parts.join('')).not.toMatch(/\p{Cc}/u);
});

test('a log has no line for a single plan', () => {
  const { stream, parts } = kept(false);
  const progress = progressOf(1, stream);
  vi.advanceTimersByTime(60_000);
  progress.within({ file: 'hall.json', doing: 'papers', share: 0.5 });
  expect(parts).toEqual([]);
});
