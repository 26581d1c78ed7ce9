import type * as z from 'zod/mini';
import { moreText } from './figure-words.ts';

/** What keeps a file from being read. */
export interface PlanProblem {
  /** Such as `rooms[2].outline[5]`; empty: the file as a whole. */
  readonly path: string;
  /** Runs on from the path: "must be above 0; it is -3". */
  readonly message: string;
}

/** A problem that may stand for several. */
interface CountedProblem extends PlanProblem {
  readonly count: number;
}

/** So many problems are listed; a last line says how many more there are. */
const MOST_PROBLEMS = 20;

type Issue = z.core.$ZodIssue;

const plainName = /^[A-Za-z_$][\w$]*$/;
const LONGEST_SHOWN = 60;

export function problemPath(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, key) => {
    if (typeof key === 'number') return `${text}[${key}]`;
    const name = String(key);
    if (!plainName.test(name)) return `${text}[${shown(name)}]`;
    return text === '' ? name : `${text}.${name}`;
  }, '');
}

export function problemsOf(issues: readonly Issue[]): readonly PlanProblem[] {
  return problemsCut(
    issues.flatMap((issue): readonly CountedProblem[] =>
      issue.code === 'unrecognized_keys'
        ? issue.keys.map((key) => ({
            path: problemPath([...issue.path, key]),
            message: 'is not a field of a plan',
            count: 1,
          }))
        : [{ path: problemPath(issue.path), message: problemMessage(issue), count: issueCount(issue) }],
    ),
  );
}

/** The first of them and how many more there are. */
export function problemsCut(problems: readonly (PlanProblem & { readonly count?: number })[]): readonly PlanProblem[] {
  const listed = problems.slice(0, MOST_PROBLEMS).map(({ path, message }) => ({ path, message }));
  const more = problems.slice(MOST_PROBLEMS).reduce((sum, problem) => sum + (problem.count ?? 1), 0);
  return more === 0 ? listed : [...listed, { path: '', message: moreText(more, 'problem') }];
}

function issueCount(issue: Issue): number {
  const count: unknown = issue.code === 'custom' ? issue.params?.count : undefined;
  return typeof count === 'number' ? count : 1;
}

function problemMessage(issue: Exclude<Issue, { code: 'unrecognized_keys' }>): string {
  if (issue.input === undefined) return 'is missing';
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${typeWords(issue.expected)}; it is ${shown(issue.input)}`;
    case 'invalid_value':
      return `must be ${listed(issue.values.map((value) => shown(value)))}; it is ${shown(issue.input)}`;
    case 'too_small':
      if (issue.origin === 'string') return 'is empty';
      return `must be ${issue.inclusive ? 'at least' : 'above'} ${issue.minimum}; it is ${shown(issue.input)}`;
    case 'too_big':
      return `must be ${issue.inclusive ? 'at most' : 'below'} ${issue.maximum}; it is ${shown(issue.input)}`;
    case 'custom':
      return issue.message;
    default:
      throw new Error(`no words for ${issue.code}`);
  }
}

function typeWords(expected: string): string {
  const words: Readonly<Record<string, string>> = {
    number: 'a number',
    int: 'a whole number',
    string: 'text',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object in braces',
  };
  return words[expected] ?? expected;
}

/** A value as it stands in the file, cut short. */
function shown(value: unknown): string {
  if (typeof value === 'number') return String(value);
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = typeof value === 'string' ? JSON.stringify(value) : String(value);
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}...` : text;
}

function listed(values: readonly string[]): string {
  return values.length === 1 ? String(values[0]) : `one of ${values.join(', ')}`;
}
