import { layersMakeUp } from '../../../plan/papers.ts';
import type { Note } from '../../parts/FieldNote.tsx';
import { figureShort } from '../../parts/format.ts';

/** Layers of insulation as they are typed, from the slab up. */

export type LayersReading =
  | { readonly kind: 'layers'; readonly layersMm: readonly number[] }
  | { readonly kind: 'refused'; readonly why: string };

/** What parts one layer from the next. A comma alone does not: between figures it is a decimal mark. */
const parting = /\s*[+;/]\s*|,\s+|\s+/u;
const thickness = /^\d+(?:[.,]\d+)?$/u;
const mostMm = 1000;

/** Reads thicknesses with +, ; or a space between. A comma that may as well part two layers as be a decimal mark is asked back.
 *  Examples: "20 + 10", "20 10", "20, 10" -> 20 and 10; "12,5 + 20" -> 12.5 and 20; "30,30" -> refused */
export function layersRead(text: string): LayersReading {
  const parts = text.replace(/mm/giu, ' ').trim().split(parting);
  // A thickness is told to a tenth of a millimetre at most.
  if (parts.some((part) => /^\d+(?:,\d+)+$/u.test(part) && (parts.length === 1 || !/^\d+,\d$/u.test(part)))) {
    const apart = parts.flatMap((part) => part.split(',')).join(' + ');
    return { kind: 'refused', why: `Write layers with + between, as ${apart}.` };
  }
  const layersMm = parts.map((part) => (thickness.test(part) ? Number(part.replace(',', '.')) : Number.NaN));
  return layersMm.every((mm) => mm > 0 && mm <= mostMm)
    ? { kind: 'layers', layersMm }
    : { kind: 'refused', why: `Write thicknesses in mm, to ${mostMm} each, with + between, as 20 + 10.` };
}

/** As they are read again. */
export function layersText(layersMm: readonly number[]): string {
  return layersMm.map((mm) => figureShort(mm, 2)).join(' + ');
}

/** How layers are typed; or, where they do not make up the insulation of the rooms, what that comes to.
 *  @param insulationsMm of the rooms; null: not entered */
export function layersNote(layersMm: readonly number[], insulationsMm: readonly (number | null)[]): Note {
  const sumMm = layersMm.reduce((sum, mm) => sum + mm, 0);
  const laid = [...new Set(insulationsMm)].filter((mm) => mm !== 0);
  const known = laid.filter((mm) => mm !== null).sort((a, b) => a - b);
  const wanted = known.filter((mm) => !layersMakeUp(layersMm, mm)).map(told);
  if (layersMm.length === 0 || (laid.length > 0 && wanted.length === 0 && known.length === laid.length)) {
    return { tone: 'quiet', words: 'In mm from the slab up, with + between.' };
  }
  const sum = `${layersMm.length > 1 ? `${layersText(layersMm)} is ` : 'This is '}${told(sumMm)}`;
  const oneLayer = 'the take-off counts one layer';
  const words =
    known.length === 0
      ? `${sum}. The build-up has no thickness of insulation: until one of ${told(sumMm)} is entered, ${oneLayer}.`
      : laid.length === 1
        ? `${sum}; the insulation is ${wanted[0]}. Until the layers add up to ${wanted[0]}, ${oneLayer}.`
        : `${sum}. Where the insulation is ${eitherText(known.length < laid.length ? [...wanted, 'not entered'] : wanted)}, ${oneLayer}.`;
  return { tone: 'caution', words };
}

/** Example: "40 mm, 50 mm or not entered" */
function eitherText(parts: readonly string[]): string {
  return [parts.slice(0, -1).join(', '), ...parts.slice(-1)].filter((part) => part !== '').join(' or ');
}

function told(mm: number): string {
  return `${figureShort(mm, 2)} mm`;
}
