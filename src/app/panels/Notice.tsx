import { useEffect } from 'react';
import { surfaceFocus } from '../canvas/surface.ts';
import { Icon } from '../parts/Icon.tsx';
import { boardStore } from '../state/boardStore.ts';
import { useBoard } from '../state/hooks.ts';

/** So long a word about a change stays, ms. A refusal stays until it is put away. */
const toldMs = 4000;
const put = () => boardStore.setState({ notice: null });

/** What had the focus goes with it. */
function putAway(): void {
  put();
  surfaceFocus();
}

/** What a change did, or what is wrong with a file and where. */
export function Notice() {
  const notice = useBoard((state) => state.notice);
  useEffect(() => {
    if (notice?.tone !== 'told') return;
    // It stays as long as a hand or the focus is on it.
    const timer = setInterval(() => {
      if (document.querySelector('.notice:is(:hover, :focus-within)') === null) put();
    }, toldMs);
    return () => clearInterval(timer);
  }, [notice]);
  return (
    <div role="status" aria-live="polite">
      {notice !== null && (
        <div className={`notice ${notice.tone}`}>
          <div>
            {notice.text}
            {notice.details.length > 0 && (
              <ul className="small">
                {notice.details.map(({ at, says }) => (
                  <li key={`${at} ${says}`}>
                    {at !== '' && <code>{at}</code>} {says}
                  </li>
                ))}
              </ul>
            )}
          </div>
          <button type="button" className="button bare" aria-label="Put this note away" onClick={putAway}>
            <Icon name="close" />
          </button>
        </div>
      )}
    </div>
  );
}
