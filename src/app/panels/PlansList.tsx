import { demoLay, demos } from '../files/demos.ts';
import { KeptPlans } from './KeptPlans.tsx';

/** The plans that are at hand: those that the browser keeps, and the demos. */
export function PlansList({ menu }: { readonly menu: string }) {
  return (
    <>
      <KeptPlans menu={menu} />
      <h2>Demo floors</h2>
      <ul aria-label="Demo floors">
        {demos.map((demo) => (
          <li key={demo.path}>
            <button
              type="button"
              className="button"
              popoverTarget={menu}
              popoverTargetAction="hide"
              onClick={() => void demoLay(demo)}
            >
              {demo.name}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
