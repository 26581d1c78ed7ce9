import { planIsHeated } from '../plan/plan.ts';
import type { Page } from './page.ts';
import type { PaperSource } from './paper-source.ts';
import { edgeSection, pipeSection, sleeveSection } from './section-edges.ts';
import { floorSection } from './section-floor.ts';
import { jointSections } from './section-joints.ts';
import { floorLayers } from './section-layers.ts';
import { type Section, sectionScales, sectionSketch } from './section-sketch.ts';
import { sketchesHaveAlone, sketchPages } from './sketch-page.ts';

/** Pages with what lies under each floor and how its joints, edges and pipes are made, to one scale: the largest that leaves no section alone on a page
 *  that others could share. */
export function sectionPages(source: PaperSource): readonly Page[] {
  const sections = sectionsOf(source);
  const drawn = sectionScales(sections)
    .filter((scale, i) => i === 0 || scale <= smallest)
    .map((scale) => sections.map((section) => sectionSketch(section, scale)));
  const sketches = drawn.find((each) => !sketchesHaveAlone(each)) ?? drawn[0] ?? [];
  return sketchPages(source, 'Build-up and joints in section', sketches, principleText);
}

const principleText = 'Principle. The maker\u2019s detail goes before it.';

/** Thin layers are told apart no smaller. */
const smallest = 5;

/** Floors; then joints, edges and pipes as the plan has them; then sleeves. */
function sectionsOf(source: PaperSource): readonly Section[] {
  const { plan, analysis } = source;
  const floors = floorLayers(source);
  const [main] = floors;
  if (main === undefined) return [];
  return [
    ...floors.map((floor) => floorSection(source, floor)),
    ...jointSections(source, floors),
    edgeSection(source, main),
    ...(plan.pipes.length > 0 ? [pipeSection(source, main)] : []),
    ...(planIsHeated(plan) && plan.heating !== null && analysis.joints.length > 0 ? [sleeveSection(source, main)] : []),
  ];
}
