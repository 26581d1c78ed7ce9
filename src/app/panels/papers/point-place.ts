import { surfaceClass, surfaceFocus } from '../../canvas/surface.ts';
import { toolStore, wish } from '../../tools/toolStore.ts';
import { toolTake } from '../../tools/tools.ts';
import type { Wishes } from '../../tools/wishes.ts';

/** Takes up the tool that places points and grid lines: keys lead it on the board. When it is put down there the focus is where it came from. */
export function pointPlace(kind: Wishes['paperPoint'], from: HTMLElement): void {
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
