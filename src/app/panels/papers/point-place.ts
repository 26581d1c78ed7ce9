import type { PaperPointKind } from '../../../plan/edits/paper-points.ts';
import { surfaceClass, surfaceFocus } from '../../canvas/surface.ts';
import { toolStore, wish } from '../../tools/toolStore.ts';
import { toolTake } from '../../tools/tools.ts';

/** Takes up the tool that places points: keys lead it on the board. When it is put down there the focus is where it came from. */
export function pointPlace(kind: PaperPointKind, from: HTMLElement): void {
  wish({ paperPoint: kind });
  toolTake('paperPoint');
  surfaceFocus();
  const end = toolStore.subscribe(({ stance }) => {
    if (stance.tool === 'paperPoint') return;
    end();
    const { activeElement } = document;
    const isLeft = activeElement === document.body || activeElement?.closest(`.${surfaceClass}, .bar-options`) != null;
    if (isLeft && from.isConnected) from.focus();
  });
}
