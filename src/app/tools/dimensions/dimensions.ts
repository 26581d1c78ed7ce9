import { type ObjectList, objectFind } from '../../../plan/edits/objects.ts';
import { clearDimensions } from './clear.ts';
import type { Dimension, DimensionScene } from './dimension.ts';
import { jointDimensions } from './joint.ts';
import { doorwayDimensions } from './opening.ts';
import { sideDimensions } from './sides.ts';

/** What stands on the floor with a distance to the walls round it. */
const standing: readonly ObjectList[] = ['columns', 'pipes', 'joinery', 'slabContacts', 'keepClear', 'sunZones'];

/** The dimensions of the one thing that is chosen, on the plan that is shown; none where several are. */
export function dimensionsOf(scene: DimensionScene): readonly Dimension[] {
  const { file, chosen } = scene;
  const [thing, ...more] = chosen;
  if (thing === undefined || more.length > 0) return [];
  if (thing.kind === 'room') return sideDimensions(file, thing.key);
  if (thing.kind === 'joint') return jointDimensions(scene);
  const list = thing.kind === 'object' ? objectFind(file, thing.key)?.list : undefined;
  if (list === undefined) return [];
  if (list === 'doorways') return doorwayDimensions(file, thing.key);
  if (list === 'drawnJoints') return jointDimensions(scene);
  return standing.includes(list) ? clearDimensions(file, thing.key) : [];
}
