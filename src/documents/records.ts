import { planIsHeated } from '../plan/plan.ts';
import type { Form } from './form.ts';
import type { PaperSource } from './paper-source.ts';
import { afterPourForm, beforePourForm } from './records-checks.ts';
import { drynessForm } from './records-dryness.ts';
import { balancingForm, firstHeatingForm } from './records-heating.ts';
import { sourceHeating } from './records-start.ts';

/** The forms that last: before the pour, pressure test, after the pour, first heating, dryness. Those of the heating are left out where no room is heated. */
export function recordForms(source: PaperSource): readonly Form[] {
  const heated = planIsHeated(source.plan);
  const heating = sourceHeating(source);
  return [
    beforePourForm(source),
    ...(heated ? [balancingForm(source)] : []),
    ...(heated ? [firstHeatingForm(source, heating)] : []),
    drynessForm(source, heating),
    afterPourForm(source),
  ];
}
