import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import { edgeSection, pipeSection, sleeveSection } from './section-edges.ts';
import { floorSection } from './section-floor.ts';
import { jointSections } from './section-joints.ts';
import { floorLayers } from './section-layers.ts';
import { type Section, sectionSketch, sectionsScale } from './section-sketch.ts';
import { sketchPages } from './sketch-page.ts';

/** Pages with what lies under each floor and how its joints, edges and pipes are made, to scale. */
export function sectionPages(source: PaperSource): readonly Page[] {
  const sketches = sectionGroups(source).flatMap((sections) => {
    const scale = sectionsScale(sections);
    return sections.map((section) => sectionSketch(section, scale));
  });
  return sketchPages(source, 'Build-up and joints in section', sketches);
}

/** Floors; then joints, edges and pipes as the plan has them; then sleeves. Those of a group are drawn to one scale. */
function sectionGroups(source: PaperSource): readonly (readonly Section[])[] {
  const { plan, analysis } = source;
  const floors = floorLayers(source);
  const [main] = floors;
  if (main === undefined) return [];
  return [
    floors.map((floor) => floorSection(source, floor)),
    [
      ...jointSections(source, floors),
      edgeSection(source, main),
      ...(plan.pipes.length > 0 ? [pipeSection(source, main)] : []),
    ],
    plan.heating !== null && analysis.joints.length > 0 ? [sleeveSection(source, main)] : [],
  ];
}
