import { type PlanFile, planFileSchema } from './schema.ts';

const keyOrder = Object.keys(planFileSchema.shape) as (keyof PlanFile)[];

/** A plan as the text of a file: fields in the order of the schema, one object of the plan a line, so that versions of a plan compare
 *  line by line. Reads back to the same plan. */
export function planWrite(file: PlanFile): string {
  const lines = keyOrder
    .filter((key) => file[key] !== undefined)
    .map((key) => `  ${JSON.stringify(key)}: ${valueText(file[key])}`);
  return `{\n${lines.join(',\n')}\n}\n`;
}

function valueText(value: PlanFile[keyof PlanFile]): string {
  if (!Array.isArray(value) || value.length === 0) return JSON.stringify(value);
  return `[\n${value.map((item) => `    ${JSON.stringify(item)}`).join(',\n')}\n  ]`;
}
