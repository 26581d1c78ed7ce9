import { circle } from '../../documents/circle.ts';
import { fillInks, type Ink, lineInks, markInks } from '../../documents/ink.ts';
import type { LegendRow } from '../../documents/legend.ts';
import { colours, type Theme } from '../../documents/styles.ts';
import { marks } from '../../documents/symbols.ts';
import type { Point } from '../../geometry/point.ts';
import { useBoard } from '../state/hooks.ts';

type WithoutWords<Row> = Row extends LegendRow ? Omit<Row, 'words'> : never;
type SampleOf = WithoutWords<LegendRow>;

/** Room of a sample, mm on paper as on the drawing; a symbol that is taller is drawn smaller. */
const widthMm = 11;
const heightMm = 3.6;

/** A line, fill or symbol of the drawing as it looks there, beside its words. */
export function Sample({ of }: { readonly of: SampleOf }) {
  const theme = useBoard((state) => state.theme);
  const reach = of.shape === 'mark' ? marks[of.style].reachMm : { up: heightMm / 2, down: heightMm / 2 };
  return (
    <svg
      className={of.shape === 'mark' ? 'sample tall' : 'sample'}
      viewBox={`${-widthMm / 2} ${-reach.up} ${widthMm} ${reach.up + reach.down}`}
      aria-hidden="true"
    >
      {sampleInks(of).map((ink, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the inks of a sample never change their order
        <InkShape key={i} ink={ink} theme={theme} />
      ))}
    </svg>
  );
}

function sampleInks(of: SampleOf): readonly Ink[] {
  switch (of.shape) {
    case 'line': {
      const reach = widthMm / 2 - 1.6;
      return lineInks(of.style, [
        [-reach, 0],
        [reach, 0],
      ] satisfies Point[]);
    }
    case 'fill': {
      // a pipe is known by being round
      if (of.style === 'pipe') return fillInks(of.style, circle([0, 0], heightMm / 2 - 0.3), []);
      const [x, y] = [2.6, heightMm / 2 - 0.3];
      return fillInks(
        of.style,
        [
          [-x, -y],
          [x, -y],
          [x, y],
          [-x, y],
        ] satisfies Point[],
        [],
      );
    }
    case 'mark': {
      const reach = marks[of.style].reachMm;
      return markInks({ style: of.style, text: null }, [(reach.left - reach.right) / 2, 0]);
    }
  }
}

function InkShape({ ink, theme }: { readonly ink: Ink; readonly theme: Theme }) {
  if (ink.ink === 'text' || ink.ink === 'ruled') return null;
  const pen = {
    fill: ink.fill === null ? 'none' : colours[ink.fill][theme],
    stroke: ink.stroke === null ? 'none' : colours[ink.stroke.colour][theme],
    strokeWidth: ink.stroke?.widthMm,
    strokeDasharray: ink.stroke?.dashMm.join(' ') || undefined,
    strokeLinecap: ink.stroke?.cap,
  };
  if (ink.ink === 'disc') return <circle cx={ink.centre[0]} cy={ink.centre[1]} r={ink.radiusMm} {...pen} />;
  const d = ink.lines.map((line) => `M${line.map(([x, y]) => `${x} ${y}`).join('L')}${ink.closed ? 'Z' : ''}`);
  return <path d={d.join('')} {...pen} />;
}
