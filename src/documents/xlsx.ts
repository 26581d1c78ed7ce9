import { strToU8, zipSync } from 'fflate';
import { squeezeLevel } from './squeeze.ts';
import { columnFigure, columnText, type Table, tableOf } from './table.ts';
import { oneLine } from './words.ts';
import { sheetNames } from './xlsx-cells.ts';
import { type Sheet, sheetHeadRow, sheetRange, sheetRepeatsFirst, sheetXml } from './xlsx-sheet.ts';
import { stylesXml } from './xlsx-styles.ts';
import { columnWidths } from './xlsx-width.ts';
import { xmlText } from './xml-text.ts';

/** Tables as one workbook, ECMA-376: a sheet about them, then one a table. Written by hand on top of a zip: what is frozen and printed is most of the
 *  file, and every byte is the same on every machine. */

/** All parts bear the same time, told without a zone: the same tables are the same bytes everywhere. */
const partTime = '1980-01-01T00:00:00';

/** What stands on the first sheet, title and cautions on every printed page too. */
export interface WorkbookAbout {
  readonly title: string;
  /** Such as 2027-03-01. */
  readonly date: string;
  readonly cautions: readonly string[];
}

export function tablesXlsx(tables: readonly Table[], about: WorkbookAbout): Promise<Uint8Array> {
  const { date, cautions } = about;
  const title = oneLine(about.title);
  const [first = 'About', ...names] = sheetNames(['About', ...tables.map(({ name }) => name)]);
  const sheets: readonly Sheet[] = [
    aboutSheet(first, tables, names, { title, date, cautions }),
    ...tables.map((table, i): Sheet => {
      const { columns, rows, notes } = table;
      const widths = columnWidths(table);
      return {
        name: names[i] ?? table.name,
        title: `${table.title}: ${title}`,
        cautions,
        lead: [],
        columns,
        rows,
        ...(table.sums && { sums: table.sums }),
        ...(table.rowDecimals && { rowDecimals: table.rowDecimals }),
        notes,
        widths,
      };
    }),
  ];
  const parts = {
    '[Content_Types].xml': contentTypesXml(sheets),
    '_rels/.rels': relationsXml([
      ['officeDocument/2006/relationships/officeDocument', 'xl/workbook.xml'],
      ['package/2006/relationships/metadata/core-properties', 'docProps/core.xml'],
    ]),
    'docProps/core.xml': coreXml(title),
    'xl/workbook.xml': workbookXml(sheets),
    'xl/_rels/workbook.xml.rels': relationsXml([
      ...sheets.map((_, i) => ['officeDocument/2006/relationships/worksheet', `worksheets/sheet${i + 1}.xml`] as const),
      ['officeDocument/2006/relationships/styles', 'styles.xml'],
    ]),
    'xl/styles.xml': stylesXml(),
    ...Object.fromEntries(sheets.map((sheet, i) => [`xl/worksheets/sheet${i + 1}.xml`, sheetXml(sheet, i)])),
  };
  const files = Object.entries(parts).map(([path, xml]) => [path, strToU8(declaration + xml)] as const);
  return Promise.resolve(zipSync(Object.fromEntries(files), { level: squeezeLevel, mtime: partTime }));
}

const declaration = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const schemas = 'http://schemas.openxmlformats.org';

/** What the workbook is, with the cautions, and what each of its sheets lists. */
function aboutSheet(
  name: string,
  tables: readonly Table[],
  names: readonly string[],
  { title, date, cautions }: WorkbookAbout,
): Sheet {
  type Row = { readonly table: Table; readonly sheet: string };
  const { columns, rows } = tableOf<Row>(
    { name, title },
    [
      columnText('Sheet', ({ sheet }) => sheet),
      columnText('What it lists', ({ table }) => table.title),
      columnFigure('Rows', null, 0, ({ table }) => table.rows.length),
    ],
    tables.map((table, i) => ({ table, sheet: names[i] ?? table.name })),
  );
  const notes = [
    'Columns of figures are numbers; units stand in the heads. What holds for a whole list stands under it.',
  ];
  return {
    name,
    title,
    cautions,
    lead: [title, date, ...cautions],
    columns,
    rows,
    notes,
    widths: columnWidths({ columns, rows }),
  };
}

function contentTypesXml(sheets: readonly Sheet[]): string {
  const word = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  const part = (path: string, type: string) => `<Override PartName="/${path}" ContentType="${type}"/>`;
  return [
    `<Types xmlns="${schemas}/package/2006/content-types">`,
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>',
    '<Default Extension="xml" ContentType="application/xml"/>',
    part('docProps/core.xml', 'application/vnd.openxmlformats-package.core-properties+xml'),
    part('xl/workbook.xml', `${word}.sheet.main+xml`),
    part('xl/styles.xml', `${word}.styles+xml`),
    ...sheets.map((_, i) => part(`xl/worksheets/sheet${i + 1}.xml`, `${word}.worksheet+xml`)),
    '</Types>',
  ].join('');
}

function relationsXml(targets: readonly (readonly [type: string, target: string])[]): string {
  const each = targets.map(
    ([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${schemas}/${type}" Target="${target}"/>`,
  );
  return `<Relationships xmlns="${schemas}/package/2006/relationships">${each.join('')}</Relationships>`;
}

function coreXml(title: string): string {
  return `<cp:coreProperties xmlns:cp="${schemas}/package/2006/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>${xmlText(title)}</dc:title></cp:coreProperties>`;
}

/** The workbook: its sheets, and of each which rows are printed on every page and which are filtered. */
function workbookXml(sheets: readonly Sheet[]): string {
  const names = sheets.flatMap((sheet, i) => {
    const quoted = xmlText(`'${sheet.name.replaceAll("'", "''")}'`);
    const row = sheetHeadRow(sheet);
    const [from, to] = sheetRange(sheet).map((cell) => cell.replace(/^([A-Z]+)(\d+)$/u, '$$$1$$$2'));
    const filtered = `<definedName name="_xlnm._FilterDatabase" localSheetId="${i}" hidden="1">${quoted}!${from}:${to}</definedName>`;
    const first = sheetRepeatsFirst(sheet) ? `${quoted}!$A:$A,` : '';
    const printed = `<definedName name="_xlnm.Print_Titles" localSheetId="${i}">${first}${quoted}!$${row}:$${row}</definedName>`;
    return [sheet.lead.length > 0 || sheet.rows.length === 0 ? '' : filtered, printed];
  });
  const tabs = sheets.map(({ name }, i) => `<sheet name="${xmlText(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`);
  return [
    `<workbook xmlns="${schemas}/spreadsheetml/2006/main" xmlns:r="${schemas}/officeDocument/2006/relationships">`,
    '<bookViews><workbookView/></bookViews>',
    `<sheets>${tabs.join('')}</sheets>`,
    `<definedNames>${names.join('')}</definedNames>`,
    '</workbook>',
  ].join('');
}
