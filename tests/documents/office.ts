import { execFile } from 'node:child_process';
import { accessSync, constants, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';

/** LibreOffice as a reader of workbooks, where it is on the machine. */

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The first of the usual names on the path; null: none here. */
export const office: string | null =
  ['soffice', 'libreoffice']
    .flatMap((name) => (process.env.PATH ?? '').split(delimiter).map((folder) => join(folder, name)))
    .find(isProgram) ?? null;

/** CSV of every sheet, commas and UTF-8, cells as they are and not as they are shown (the options are told in LibreOffice's help, filter options of CSV). */
const csvFilter = 'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1';

/** Opens workbooks, all of them in one start of the program, which takes longer than the reading.
 *  @returns by workbook its sheets as CSV, by their names */
export async function officeSheets(
  workbooks: ReadonlyMap<string, Uint8Array>,
): Promise<ReadonlyMap<string, ReadonlyMap<string, string>>> {
  if (office === null) throw new Error('LibreOffice is not on this machine');
  const folder = mkdtempSync(join(tmpdir(), 'screed-bays-office-'));
  try {
    const files = [...workbooks].map(([name, workbook]) => {
      const file = join(folder, `${name}.xlsx`);
      writeFileSync(file, workbook);
      return file;
    });
    const own = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    const out = join(folder, 'out');
    const args = [own, '--headless', '--convert-to', csvFilter, '--outdir', out, ...files];
    await promisify(execFile)(office, args, { timeout: 150_000 });
    const made = readdirSync(out);
    const sheetsOf = (name: string) =>
      made.flatMap((file): [string, string][] => {
        if (!file.startsWith(`${name}-`)) return [];
        const text = readFileSync(join(out, file), 'utf8').replace(/^\ufeff/u, '');
        return [[file.slice(name.length + 1).replace(/\.csv$/u, ''), text]];
      });
    return new Map([...workbooks.keys()].map((name) => [name, new Map(sheetsOf(name))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
