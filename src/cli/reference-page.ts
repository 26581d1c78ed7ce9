import { roundedText } from '../plan/figure-words.ts';
import { findingKinds } from '../plan/finding-kinds.ts';
import { heatingSteps, leastBase, orderStarts, secondStart, setOutTolerance } from '../plan/papers.ts';
import {
  defaultRuleSet,
  defaults,
  type Figure,
  materials,
  type RuleSet,
  ruleSets,
  rules,
  screedClasses,
  screedClassKeys,
  screedTypes,
  thicknessTable,
} from '../plan/reference.ts';
import { sourceOf, sources } from '../plan/sources.ts';

/** The page of reference tables, in Markdown, made from the files of `shared/`. */
export function referencePage(): string {
  return `${[
    intro,
    ruleSetSection(),
    screedSection(),
    thicknessSection(),
    figureSection('What a plan takes where it says nothing', defaults),
    figureSection('Figures of the rules', rules),
    figureSection('What orders start with', {
      ...orderStarts,
      setOutToleranceMm: setOutTolerance,
      leastBaseMm: leastBase,
    }),
    heatingSection(),
    materialSection(),
    findingSection(),
    sourceSection(),
  ].join('\n\n')}\n`;
}

const intro = `# Reference data

Made by \`npm run generate\` from the files of \`shared/\`; do not edit. Standing: **published** - seen in print; **restated** - in a text that
restates the standard; **memory** - recalled, not seen: check it against the document; **practice** - common in the trade; **derived** - our
own arithmetic; **user** - entered. The standard in force, the maker's data sheet and the structural engineer come first.`;

type Cells = readonly string[];

function heatingSection(): string {
  const rows = heatingSteps.map(({ words, days, supplyC }) => [
    words,
    figureCell(days),
    figureCell(supplyC),
    standing(days.source),
  ]);
  const second = ['Start after tiling, at most a day', '-', figureCell(secondStart), standing(secondStart.source)];
  return `## First heating\n\n${table(['Step', 'Days', 'Figure', 'Standing'], [...rows, second])}`;
}

function table(head: Cells, rows: readonly Cells[]): string {
  const line = (cells: Cells) => `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** 12 (10 to 12) 1e-6/K. */
function figureCell(figure: Figure | null): string {
  if (figure === null) return '-';
  const small = figure.unit === '1/K';
  const number = (value: number) => roundedText(small ? value * 1e6 : value, 4);
  const [least, most] = figure.range ?? [];
  const range = least === undefined || most === undefined ? '' : ` (${number(least)} to ${number(most)})`;
  const unit = small ? '1e-6/K' : figure.unit;
  return `${number(figure.value)}${range}${unit === '1' ? '' : ` ${unit}`}`;
}

function standing(key: string): string {
  const source = sourceOf(key);
  if (source === null) throw new Error(`no source ${key}`);
  return source.restated ? `${source.standing}, restated` : source.standing;
}

function sourceCell(key: string): string {
  return `[${key}](#${key}), ${standing(key)}`;
}

function ruleSetSection(): string {
  const rows = Object.entries(ruleSets).flatMap(([key, ruleSet]: [string, RuleSet]) =>
    ruleSet.rows.map(
      (row): Cells => [
        `\`${key}\``,
        row.heated === null ? 'either' : row.heated ? 'heated' : 'unheated',
        row.covering,
        figureCell(row.area),
        figureCell(row.length),
        figureCell(row.aspect),
        sourceCell(row.source),
      ],
    ),
  );
  const names = Object.entries(ruleSets).map(([key, { name, screeds, note, sealantLeastWidth }]: [string, RuleSet]) => [
    `\`${key}\``,
    name,
    screeds.join(', '),
    figureCell(sealantLeastWidth),
    note,
  ]);
  return `## Rule sets

${table(['rule set', 'name', 'for', 'least sealant width', 'note'], names)}

Limits of one bay, - where there is none. The first row that fits holds; where a rule set has no row for a floor, or is not for the screed, that
floor keeps the limits of \`${defaultRuleSet}\`.

${table(['rule set', 'floor', 'covering', 'area', 'longest side', 'length : width', 'source'], rows)}`;
}

function screedSection(): string {
  const properties = [
    ['linear expansion', 'expansion'],
    ['elastic modulus', 'elasticModulus'],
    ['density', 'density'],
    ['drying shrinkage', 'shrinkage'],
    ['highest next to the pipes', 'highest'],
    ['first heating, days after laying', 'firstHeating'],
    ['dry enough to cover, heated', 'dryness'],
  ] as const;
  const rows = Object.entries(screedTypes).flatMap(([key, type]) =>
    properties.map(([words, property]) => [key, words, figureCell(type[property]), sourceCell(type[property].source)]),
  );
  const names = Object.entries(screedTypes).map(([key, type]) => `${key} ${type.name.toLowerCase()}`);
  const classes = screedClassKeys.map((key) => [
    key,
    figureCell(screedClasses[key].compressive),
    figureCell(screedClasses[key].flexural),
    screedClasses[key].thickness,
  ]);
  return `## Screeds

${names.join(', ')}.

${table(['type', 'figure', 'value', 'source'], rows)}

Strength classes, ${sourceCell('en-13813')}:

${table(['class', 'compressive', 'flexural', 'row of the thickness table'], classes)}`;
}

function thicknessSection(): string {
  const { columns, rows, unit, source, columnSource } = thicknessTable;
  const head = columns.map(({ areaLoadKPa, pointLoadKN, insulationGivesMm }) => {
    const point = pointLoadKN === 0 ? '' : `, point ${pointLoadKN} kN`;
    return `to ${areaLoadKPa} kN/m2${point}; insulation gives at most ${insulationGivesMm} mm`;
  });
  const body = Object.entries(rows).map(([key, { least, cover, note }]) => [
    key,
    ...least.map(String),
    `${figureCell(cover)}, ${sourceCell(cover.source)}`,
    note,
  ]);
  return `## Least thickness of a floating screed

In ${unit}, without the pipe: ${sourceCell(source)}. The heavier of the two loads chooses the column: ${sourceCell(columnSource)}.

${table(['screed', ...head, 'cover over the pipe', 'note'], body)}`;
}

function figureSection(title: string, figures: Readonly<Record<string, Figure>>): string {
  const rows = Object.entries(figures).map(([key, figure]) => [
    `\`${key}\``,
    figureCell(figure),
    sourceCell(figure.source),
  ]);
  return `## ${title}\n\n${table(['figure', 'value', 'source'], rows)}`;
}

function materialSection(): string {
  const rows = Object.values(materials).flatMap(({ name, expansion, conductivity, density }) =>
    Object.entries({ expansion, conductivity, density }).flatMap(([words, figure]): readonly Cells[] =>
      figure === null ? [] : [[name, words, figureCell(figure), sourceCell(figure.source)]],
    ),
  );
  return `## Materials\n\n${table(['material', 'figure', 'value', 'source'], rows)}`;
}

function findingSection(): string {
  const rows = Object.entries(findingKinds).map(([code, kind]) => [
    `\`${code}\``,
    kind.severity,
    sourceCell(kind.source),
  ]);
  return `## Findings\n\n${table(['code', 'severity', 'source'], rows)}`;
}

function sourceSection(): string {
  const entries = Object.entries(sources).map(
    ([key, { title, where, note }]) =>
      `- <a id="${key}"></a>**${key}** - ${title}. ${where}; ${standing(key)}.${note === '' ? '' : ` ${note}`}`,
  );
  return `## Sources\n\n${entries.join('\n')}`;
}
