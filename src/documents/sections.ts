import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import { sectionGroups } from './section-details.ts';
import { sectionSketch, sectionsScale } from './section-sketch.ts';
import { sketchPages } from './sketch-page.ts';

/** Pages with what lies under each floor and how its joints, edges and pipes are made, to scale. */
export function sectionPages(source: PaperSource): readonly Page[] {
  const sketches = sectionGroups(source).flatMap((sections) => {
    const scale = sectionsScale(sections);
    return sections.map((section) => sectionSketch(section, scale));
  });
  return sketchPages(source, 'Build-up and joints in section', sketches);
}
