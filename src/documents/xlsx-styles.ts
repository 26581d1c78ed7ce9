/** Looks of cells, by their place in the list of formats that a workbook carries. */

const mostDecimals = 6;
const named = ['plain', 'title', 'head', 'head-figure', 'text', 'text-quoted', 'note', 'figure'] as const;
type NamedStyle = (typeof named)[number];

/** @returns number of a look */
export function styleOf(name: NamedStyle): number {
  return named.indexOf(name);
}

/** Of a figure with so many digits behind the mark; null: as many as it has. */
export function styleFigure(decimals: number | null): number {
  return decimals === null ? styleOf('figure') : named.length + Math.min(decimals, mostDecimals);
}

const decimals = Array.from({ length: mostDecimals + 1 }, (_, count) => count);
/** Numbers below are the program's own formats. */
const firstFormat = 164;
const font = (of: { readonly size: number; readonly bold?: true }) =>
  `<font>${of.bold ? '<b/>' : ''}<sz val="${of.size}"/><name val="Arial"/><family val="2"/></font>`;
const fonts = { usual: 0, bold: 1, title: 2 } as const;
const border = ({ colour, bottom }: { readonly colour: string; readonly bottom: string }) => {
  const side = (name: string, of: string) => `<${name} style="thin"><color rgb="FF${of}"/></${name}>`;
  const sides = ['left', 'right', 'top'].map((name) => side(name, colour)).join('');
  return `<border>${sides}${side('bottom', bottom)}<diagonal/></border>`;
};
const figureRight = '<alignment horizontal="right" vertical="top"/>';
// a text stands off the figure in the column before it
const textLeft = '<alignment horizontal="left" vertical="top" wrapText="1" indent="1"/>';
const topLeft = '<alignment vertical="top" wrapText="1"/>';
const xf = (of: { readonly attributes: string; readonly inside: string }) =>
  `<xf xfId="0" ${of.attributes} applyAlignment="1">${of.inside}</xf>`;
const head = `numFmtId="0" fontId="${fonts.bold}" applyFont="1" fillId="2" applyFill="1" borderId="1" applyBorder="1"`;
const usual = `fontId="${fonts.usual}" fillId="0" borderId="0"`;
const lined = `fontId="${fonts.usual}" fillId="0" borderId="2" applyBorder="1"`;

const looks: Readonly<Record<NamedStyle, string>> = {
  plain: `<xf xfId="0" numFmtId="0" ${usual}/>`,
  title: xf({
    attributes: `numFmtId="0" fontId="${fonts.title}" applyFont="1" fillId="0" borderId="0"`,
    inside: topLeft,
  }),
  head: xf({
    attributes: head,
    inside: '<alignment horizontal="left" vertical="bottom" wrapText="1" indent="1"/>',
  }),
  'head-figure': xf({
    attributes: head,
    inside: '<alignment horizontal="right" vertical="bottom" wrapText="1"/>',
  }),
  text: xf({ attributes: `numFmtId="0" ${lined}`, inside: textLeft }),
  // stays a text when somebody edits the cell and leaves it as it was
  'text-quoted': xf({ attributes: `numFmtId="0" ${lined} quotePrefix="1"`, inside: textLeft }),
  note: xf({ attributes: `numFmtId="0" ${usual}`, inside: topLeft }),
  figure: xf({ attributes: `numFmtId="0" ${lined}`, inside: figureRight }),
};

export function stylesXml(): string {
  const formats = decimals.map((count) => {
    const code = count === 0 ? '0' : `0.${'0'.repeat(count)}`;
    return `<numFmt numFmtId="${firstFormat + count}" formatCode="${code}"/>`;
  });
  const figures = decimals.map((count) =>
    xf({
      attributes: `numFmtId="${firstFormat + count}" applyNumberFormat="1" ${lined}`,
      inside: figureRight,
    }),
  );
  const xfs = [...named.map((name) => looks[name]), ...figures];
  return [
    '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">',
    `<numFmts count="${formats.length}">${formats.join('')}</numFmts>`,
    `<fonts count="3">${font({ size: 10 })}${font({ size: 10, bold: true })}${font({ size: 14, bold: true })}</fonts>`,
    // the first two fills are taken: readers expect these there
    '<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>',
    '<fill><patternFill patternType="solid"><fgColor rgb="FFE9EDEF"/><bgColor indexed="64"/></patternFill></fill></fills>',
    '<borders count="3"><border><left/><right/><top/><bottom/><diagonal/></border>',
    border({ colour: 'B4BCC2', bottom: '1F262B' }),
    border({ colour: 'B4BCC2', bottom: 'B4BCC2' }),
    '</borders>',
    '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
    `<cellXfs count="${xfs.length}">${xfs.join('')}</cellXfs>`,
    '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
    '</styleSheet>',
  ].join('');
}
