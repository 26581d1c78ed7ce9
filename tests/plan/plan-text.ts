/** The floor of the test plan: 4 x 4 m. */
export const square = [
  [0, 0],
  [4000, 0],
  [4000, 4000],
  [0, 4000],
];

/** Text of a plan of one room, with the fields given in place of its own or beside them; a field that is undefined is left out. */
export function planText(fields: object): string {
  return JSON.stringify({
    format: 'screed-bays/plan',
    version: 1,
    name: 'Test',
    rooms: [{ id: 'r1', outline: square }],
    ...fields,
  });
}
