import { dateIsEnterable, dateYears } from '../plan/calendar.ts';

/** The command line, taken apart. */
export type Command =
  | { readonly kind: 'run'; readonly options: RunOptions }
  | { readonly kind: 'help' }
  | { readonly kind: 'misused'; readonly message: string };

export interface RunOptions {
  readonly files: readonly string[];
  readonly json: boolean;
  /** Folder for the documents; null: none are written. */
  readonly out: string | null;
  readonly quick: boolean;
  readonly stress: boolean;
  /** Print the ways to make joints and tiles agree. */
  readonly agree: boolean;
  /** The earlier version that the one plan is compared with; null: none. */
  readonly compare: string | null;
  /** Day that the papers carry, where the plan names none; null: today. */
  readonly date: string | null;
}

export const usage = `Usage: npm run --silent bays -- PLAN.json [PLAN.json ...]

Splits the floors of plans into bays and prints what was found.

  --json      print the analyses alone, each plan on one line in the order given; null for a plan that could not be read
  --out DIR   write every paper of each plan into DIR: sheets to scale, lists, orders, records, analysis
  --date DAY  the day that the papers carry, such as 2027-03-01; today where it is left out
  --quick     leave out the exact search (changes nothing yet)
  --stress    add the stresses of held bays (changes nothing yet)
  --agree     print how joints and tiles could be brought together, each way with its price
  --compare BEFORE.json
              print what changed since an earlier version of the one plan that is given; with --out also write it
  --help      print this

Exit status: 0 no fault found, 1 faults found, 2 a plan could not be read; the highest that applies.
`;

const dateWanted = `--date needs a day of the years ${dateYears.first} to ${dateYears.last}, such as 2027-03-01`;

export function commandOf(args: readonly string[]): Command {
  const files: string[] = [];
  const flags = { json: false, quick: false, stress: false, agree: false };
  let out: string | null = null;
  let date: string | null = null;
  let compare: string | null = null;
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] as string;
    if (arg === '--help' || arg === '-h') return { kind: 'help' };
    if (arg === '--') {
      files.push(...args.slice(i + 1));
      break;
    }
    const flag = flagOf(arg, flags);
    if (flag !== null) {
      flags[flag] = true;
    } else if (arg === '--out' || arg.startsWith('--out=')) {
      out = arg === '--out' ? (args[++i] ?? '') : arg.slice('--out='.length);
      if (out === '' || out.startsWith('--')) return { kind: 'misused', message: '--out needs a folder' };
    } else if (arg === '--date' || arg.startsWith('--date=')) {
      date = arg === '--date' ? (args[++i] ?? '') : arg.slice('--date='.length);
      if (!dateIsEnterable(date)) return { kind: 'misused', message: dateWanted };
    } else if (arg === '--compare' || arg.startsWith('--compare=')) {
      compare = arg === '--compare' ? (args[++i] ?? '') : arg.slice('--compare='.length);
      if (compare === '' || compare.startsWith('--')) return { kind: 'misused', message: '--compare needs a plan' };
    } else if (arg.startsWith('-') && arg !== '-') {
      return { kind: 'misused', message: `unknown option ${arg}` };
    } else {
      files.push(arg);
    }
  }
  if (files.length === 0) return { kind: 'misused', message: 'no plan given' };
  if (compare !== null && (files.length > 1 || flags.json)) {
    return { kind: 'misused', message: '--compare takes one plan, and no --json' };
  }
  return { kind: 'run', options: { files, out, date, compare, ...flags } };
}

function flagOf<Flags extends object>(arg: string, flags: Flags): keyof Flags | null {
  return arg.startsWith('--') && arg.slice(2) in flags ? (arg.slice(2) as keyof Flags) : null;
}
