import type { Point } from '../geometry/point.ts';
import { type DiscInk, type Ink, type PathInk, paperPoint, type RuledInk, type TextInk } from './ink.ts';
import { mmText } from './mm-text.ts';
import type { Page, PageGroup } from './page.ts';
import { planMetadata } from './plan-data.ts';
import { colours, haloMm, type Stroke, textFontMm, textStyles } from './styles.ts';
import { xmlText } from './xml-text.ts';

export interface SvgOptions {
  /** The plan file, to travel inside. */
  readonly planText?: string;
  /** Rules of a style sheet with the faces that it is set in (`svg-fonts.ts`). */
  readonly fontFaces?: string;
}

/** What the faces inside are called. */
export const svgFamily = 'sheet-letters';
/** After them the same font where it is at hand, for programs that do not read what lies inside. */
const families = `${svgFamily}, 'DejaVu Sans Condensed', system-ui, sans-serif`;

/** A page as SVG: width and height in mm, one unit of the view box is one mm on paper. The same page gives the same bytes. */
export function pageSvg(page: Page, { planText, fontFaces }: SvgOptions = {}): string {
  const { paper, widthMm, heightMm, scale, title, subject, groups } = page;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}"` +
      ` font-family="${families}" stroke-linejoin="round" fill="none" fill-rule="evenodd">`,
    `<title>${xmlText(title)}</title>`,
    `<desc>${xmlText(subject)}, ${scale === null ? '' : `1 : ${scale} `}on ${paper}</desc>`,
    ...(planText === undefined ? [] : [planMetadata(planText)]),
    ...(fontFaces === undefined ? [] : [`<style>${fontFaces}</style>`]),
    `<rect width="${widthMm}" height="${heightMm}" fill="${colours.paper.light}"/>`,
    ...groups.map(groupSvg),
    '</svg>',
    '',
  ].join('\n');
}

function groupSvg({ ref, inks }: PageGroup): string {
  const name = ref === null ? '' : ` data-kind="${ref.kind}" data-id="${xmlText(ref.id)}"`;
  return `<g${name}>${inks.map(inkSvg).join('')}</g>`;
}

function inkSvg(ink: Ink): string {
  switch (ink.ink) {
    case 'path':
      return pathSvg(ink);
    case 'ruled':
      return ruledSvg(ink);
    case 'disc':
      return discSvg(ink);
    case 'text':
      return textSvg(ink);
  }
}

function pathSvg({ lines, closed, fill, stroke }: PathInk): string {
  const d = lines.map((points) => `M${points.map(pointText).join('L')}${closed ? 'Z' : ''}`).join('');
  return d === '' ? '' : `<path d="${d}"${fillText(fill)}${strokeText(stroke)}/>`;
}

/** Level and upright strokes say only where they end: half of a tiled sheet is such strokes. */
function ruledSvg({ strokes, place, stroke }: RuledInk): string {
  let d = '';
  for (let k = 0; k < strokes.length; k += 4) {
    const at = (i: number) => paperPoint(place, [strokes[k + i] as number, strokes[k + i + 1] as number]).map(fine);
    const [[x1, y1], [x2, y2]] = [at(0), at(2)] as [[number, number], [number, number]];
    d += `M${x1} ${y1}${x1 === x2 ? `V${y2}` : y1 === y2 ? `H${x2}` : `L${x2} ${y2}`}`;
  }
  return d === '' ? '' : `<path d="${d}"${strokeText(stroke)}/>`;
}

function discSvg({ centre, radiusMm, fill, stroke }: DiscInk): string {
  const [x, y] = centre;
  return `<circle cx="${mmText(x)}" cy="${mmText(y)}" r="${mmText(radiusMm)}"${fillText(fill)}${strokeText(stroke)}/>`;
}

function textSvg({ text, style, colour, at, anchor, angleDeg, halo }: TextInk): string {
  const { capMm, weight } = textStyles[style];
  const turn = angleDeg === 0 ? '' : ` transform="rotate(${mmText(angleDeg)} ${pointText(at)})"`;
  const ground =
    halo === null ? '' : ` paint-order="stroke" stroke="${colours[halo].light}" stroke-width="${mmText(2 * haloMm)}"`;
  const bold = weight === 'bold' ? ' font-weight="bold"' : '';
  return (
    `<text x="${mmText(at[0])}" y="${mmText(at[1] + capMm / 2)}" font-size="${mmText(textFontMm(style))}"${bold}` +
    ` text-anchor="${anchor}"${fillText(colour)}${ground}${turn}>${xmlText(text)}</text>`
  );
}

function fillText(fill: PathInk['fill']): string {
  return fill === null ? '' : ` fill="${colours[fill].light}"`;
}

function strokeText(stroke: Stroke | null): string {
  if (stroke === null) return '';
  const dash = stroke.dashMm.length === 0 ? '' : ` stroke-dasharray="${stroke.dashMm.join(' ')}"`;
  const cap = stroke.cap === 'butt' ? '' : ` stroke-linecap="${stroke.cap}"`;
  return ` stroke="${colours[stroke.colour].light}" stroke-width="${stroke.widthMm}"${dash}${cap}`;
}

/** To 0.01 mm on paper, a twelfth of the finest pen. */
function fine(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}

function pointText([x, y]: Point): string {
  return `${mmText(x)} ${mmText(y)}`;
}
