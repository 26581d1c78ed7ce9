import type { TextInk } from '../../src/documents/ink.ts';
import type { Page } from '../../src/documents/page.ts';
import { textStyles } from '../../src/documents/styles.ts';
import { textWidthMm } from '../../src/documents/text-width.ts';

interface TextBox {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function pageTexts({ groups }: Page): readonly TextInk[] {
  return groups.flatMap(({ inks }) => inks.flatMap((ink) => (ink.ink === 'text' ? [ink] : [])));
}

/** The room of each level text by the widest of the usual fonts and the height of its capitals. */
function boxOf({ text, style, at: [x, y], anchor }: TextInk): TextBox {
  const width = textWidthMm(text, style);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  const { capMm } = textStyles[style];
  return { text, left, right: left + width, top: y - capMm / 2, bottom: y + capMm / 2 };
}

/** Texts that lie over each other. */
export function textsOverText(page: Page): readonly string[] {
  const boxes = pageTexts(page).map(boxOf);
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.text} | ${b.text}`),
  );
}

/** Texts that reach beyond the page, less a margin that no printer fills. */
export function textsOffPage(page: Page, marginMm = 5): readonly string[] {
  return pageTexts(page)
    .map(boxOf)
    .filter(
      ({ left, right, top, bottom }) =>
        left < marginMm || right > page.widthMm - marginMm || top < marginMm || bottom > page.heightMm - marginMm,
    )
    .map(({ text }) => text);
}

interface PathBox {
  readonly fill: string | null;
  readonly closed: boolean;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Boxes round all lines that are drawn in one stroke, mm on paper. */
export function pagePaths({ groups }: Page): readonly PathBox[] {
  return groups.flatMap(({ inks }) =>
    inks.flatMap((ink) =>
      ink.ink !== 'path'
        ? []
        : ink.lines.map((points) => {
            const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
            const [left, top] = [Math.min(...xs), Math.min(...ys)];
            return {
              fill: ink.fill,
              closed: ink.closed,
              left,
              top,
              width: Math.max(...xs) - left,
              height: Math.max(...ys) - top,
            };
          }),
    ),
  );
}
