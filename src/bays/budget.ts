/** How much search the layout of one part may take, counted in steps so that the same part gets the same layout on any machine. A step is
 *  about a microsecond of work. Real floors stay far below it; an outline of thousands of corners that turn in would take minutes. */
export class Budget {
  constructor(private left: number) {}

  spend(steps: number): void {
    this.left -= steps;
  }

  get isSpent(): boolean {
    return this.left <= 0;
  }
}

/** Steps for a part of so many bays: the hall of the demos takes a tenth of the first share, large halls the more bays the more. */
export function budgetOf(bays: number): Budget {
  return new Budget(STEPS_LEAST + STEPS_PER_BAY * bays);
}

const STEPS_LEAST = 1e7;
const STEPS_PER_BAY = 5000;
