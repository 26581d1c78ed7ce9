import * as z from 'zod/mini';
import { jsonFault } from './json-fault.ts';
import { jsonKeyTwice } from './json-keys.ts';
import { planMigrated } from './migrate.ts';
import { sizeProblems } from './plan-size.ts';
import { type PlanProblem, problemPath, problemsCut, problemsOf } from './problems.ts';
import { PLAN_FORMAT, PLAN_VERSION, type PlanFile, planFileSchema } from './schema.ts';

export type PlanReading =
  | { readonly kind: 'plan'; readonly file: PlanFile }
  | { readonly kind: 'refused'; readonly problems: readonly PlanProblem[] };

/** Reads a plan file: text to a plan whose every field is known and in range, coordinates snapped to 0.1 mm.
 *  A bad floor (crossing outlines, doors that meet nothing) reads: it is for the analysis to say. */
export function planRead(text: string): PlanReading {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  let raw: unknown;
  try {
    raw = JSON.parse(body);
  } catch {
    const { line, column, found } = jsonFault(body);
    return refused([{ path: '', message: `is not JSON: ${found} not expected at line ${line}, column ${column}` }]);
  }
  const twice = jsonKeyTwice(body);
  if (twice === null) return planFrom(raw);
  const key = JSON.stringify(twice.at(-1));
  return refused([{ path: problemPath(twice), message: `is given twice: ${key} may stand once between its braces` }]);
}

/** The same for JSON that is already parsed, such as an autosave. */
export function planFrom(raw: unknown): PlanReading {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw)) {
    return refused([{ path: '', message: 'is not a plan: it must be an object in braces' }]);
  }
  const file = raw as Readonly<Record<string, unknown>>;
  const header = headerProblems(file);
  if (header.length > 0) return refused(header);
  const read = z.safeParse(planFileSchema, planMigrated(file, file.version as number), { reportInput: true });
  if (!read.success) return refused(problemsOf(read.error.issues));
  const problems = [...idProblems(read.data), ...entryProblems(read.data), ...sizeProblems(read.data)];
  return problems.length > 0 ? refused(problemsCut(problems)) : { kind: 'plan', file: read.data };
}

function refused(problems: readonly PlanProblem[]): PlanReading {
  return { kind: 'refused', problems };
}

function headerProblems(file: Readonly<Record<string, unknown>>): readonly PlanProblem[] {
  const { format, version } = file;
  if (format === undefined) return [{ path: 'format', message: `is missing; a plan has "${PLAN_FORMAT}"` }];
  if (format !== PLAN_FORMAT) return [{ path: 'format', message: `is not "${PLAN_FORMAT}"` }];
  if (version === undefined) return [{ path: 'version', message: `is missing; version ${PLAN_VERSION} is read` }];
  if (typeof version !== 'number')
    return [{ path: 'version', message: `must be a number; version ${PLAN_VERSION} is read` }];
  const known = Number.isInteger(version) && version >= 1 && version <= PLAN_VERSION;
  return known ? [] : [{ path: 'version', message: `is ${version}; version ${PLAN_VERSION} is read` }];
}

/** Entries of the joint register under a key that has one already: of two the reader could not know which is meant. */
function entryProblems({ papers }: PlanFile): readonly PlanProblem[] {
  const first = new Map<string, number>();
  return (papers?.joints ?? []).flatMap(({ key }, i): readonly PlanProblem[] => {
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, i);
    if (earlier === undefined) return [];
    const [path, other] = [i, earlier].map((at) => problemPath(['papers', 'joints', at, 'key'])) as [string, string];
    return [{ path, message: `is ${JSON.stringify(key)}, which ${other} has already` }];
  });
}

/** Ids that were used before, anywhere in the plan. */
function idProblems(file: PlanFile): readonly PlanProblem[] {
  const first = new Map<string, string>();
  const problems: PlanProblem[] = [];
  for (const [key, list] of Object.entries(file)) {
    if (!Array.isArray(list)) continue;
    for (const [i, { id }] of (list as readonly { readonly id: string }[]).entries()) {
      const path = problemPath([key, i, 'id']);
      const earlier = first.get(id);
      if (earlier === undefined) first.set(id, path);
      else problems.push({ path, message: `is ${JSON.stringify(id)}, which ${earlier} has already` });
    }
  }
  return problems;
}
