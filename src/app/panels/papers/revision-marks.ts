/** Marks of revisions: letters or numbers, each after the one before. */

const numbered = /^(.*?)(\d{1,9})$/su;
const lettered = /^[A-Z]{1,2}$/u;

/** The mark that follows those that there are, as the last of them goes on; A where there is none.
 *  Examples: A, B -> C; Z -> AA; 1, 2 -> 3; P01 -> P02; B, "as built" -> C */
export function markNext(marks: readonly string[]): string {
  const known = new Set(marks.map((mark) => mark.trim().toUpperCase()));
  const last = marks
    .map((mark) => mark.trim())
    .findLast((mark) => numbered.test(mark) || lettered.test(mark.toUpperCase()));
  let next = last === undefined ? 'A' : markAfter(last);
  while (known.has(next.toUpperCase())) next = markAfter(next);
  return next;
}

function markAfter(mark: string): string {
  const [, head = '', digits] = numbered.exec(mark) ?? [];
  if (digits !== undefined) return head + String(Number(digits) + 1).padStart(digits.length, '0');
  const isSmall = mark !== mark.toUpperCase();
  const next = lettersAfter(mark.toUpperCase());
  return isSmall ? next.toLowerCase() : next;
}

/** As columns of a table are counted: Z -> AA. */
function lettersAfter(letters: string): string {
  const last = letters.charCodeAt(letters.length - 1);
  const before = letters.slice(0, -1);
  if (last < 90) return before + String.fromCharCode(last + 1);
  return `${before === '' ? 'A' : lettersAfter(before)}A`;
}
