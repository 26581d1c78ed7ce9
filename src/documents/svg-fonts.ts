import { zlibSync } from 'fflate';
import { createFont } from 'fonteditor-core';
import { base64Of } from './base64.ts';
import type { Ink } from './ink.ts';
import type { Page } from './page.ts';
import { type PaperFonts, perSource } from './paper-source.ts';
import { squeezeLevel } from './squeeze.ts';
import { textStyles } from './styles.ts';
import { svgFamily } from './svg.ts';

/** The faces of type that go into an SVG, of each the letters that are used: the one file that knows the library which cuts them out. */

type Weight = keyof PaperFonts;

/** Letters that almost every sheet has: pages that use no others share a face, which is cut out once. */
const common = [...`${ascii()}\u00a0\u00b0\u00b1\u00b2\u00b3\u00b7\u00d7\u2013\u2019\u2026`];

/** What is set as it stands, letter by letter. Other scripts are shaped by whoever shows them, in a font that knows how. */
const setApart = /[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Common}]/u;

/** Rules of a style sheet with the faces that a page is set in.
 *  @param fonts as bytes of their files */
export function svgFonts({ groups }: Page, fonts: PaperFonts): string {
  const inks = groups.flatMap((group) => group.inks);
  const faces = facesOf(fonts);
  return (['regular', 'bold'] as const)
    .flatMap((weight) => {
      const letters = lettersOf(inks, weight);
      if (letters.size === 0) return [];
      const woff = faces(weight, letters);
      return [
        `@font-face{font-family:${svgFamily};font-weight:${weight === 'bold' ? 'bold' : 'normal'};src:url(data:font/woff;base64,${woff}) format("woff")}`,
      ];
    })
    .join('');
}

function lettersOf(inks: readonly Ink[], weight: Weight): ReadonlySet<string> {
  const letters = new Set<string>();
  for (const ink of inks) {
    if (ink.ink !== 'text' || textStyles[ink.style].weight !== weight) continue;
    for (const letter of ink.text) letters.add(letter);
  }
  return letters;
}

const facesOf = perSource((fonts: PaperFonts) => {
  const cut = new Map<string, string>();
  return (weight: Weight, letters: ReadonlySet<string>): string => {
    const others = [...letters].filter((letter) => !common.includes(letter) && setApart.test(letter));
    const codePoints = [...common, ...others.sort()].map((letter) => letter.codePointAt(0) ?? 0);
    const key = `${weight} ${codePoints}`;
    const found = cut.get(key) ?? base64Of(woffOf(fonts[weight], codePoints));
    cut.set(key, found);
    return found;
  };
});

/** A font of these letters only, without what moves them or fits them to a screen. */
function woffOf(bytes: Uint8Array, codePoints: readonly number[]): Uint8Array {
  const own = new Uint8Array(bytes).buffer;
  const deflate = (raw: ArrayLike<number>) => zlibSync(Uint8Array.from(raw), { level: squeezeLevel });
  const woff = createFont(own, { type: 'ttf', subset: [...codePoints] }).write({
    type: 'woff',
    toBuffer: false,
    deflate: deflate as never,
  });
  return new Uint8Array(woff as ArrayBuffer);
}

function ascii(): string {
  return Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i)).join('');
}
