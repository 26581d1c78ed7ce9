/** Cells under each other, two spaces in and two apart. @param sides l or r for each column */
export function tableLines(rows: readonly (readonly string[])[], sides: string): readonly string[] {
  const widths = [...sides].map((_, i) => Math.max(0, ...rows.map((row) => [...(row[i] ?? '')].length)));
  return rows.map((row) => {
    const cells = row.map((cell, i) => {
      const space = ' '.repeat(Math.max(0, (widths[i] ?? 0) - [...cell].length));
      return sides[i] === 'r' ? space + cell : cell + space;
    });
    return `  ${cells.join('  ')}`.trimEnd();
  });
}
