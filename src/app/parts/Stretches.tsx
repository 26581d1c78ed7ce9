import { type ReactNode, useCallback, useState } from 'react';

/** Rows of one stretch: a tray shows about as many. */
const stretchRows = 40;
/** A stretch this near to the view is made ahead of it. */
const aheadPx = 600;

interface StretchesProps {
  readonly count: number;
  /** About the height of a row, px: what a stretch takes up until it is made. */
  readonly rowPx: number;
  /** A row that has to be there whether it is in view or not; below 0 for none. */
  readonly wanted?: number;
  readonly children: (index: number) => ReactNode;
}

/** A long list in stretches that are made when they come near the view: a thousand rows open as fast as forty. */
export function Stretches({ count, rowPx, wanted = -1, children }: StretchesProps) {
  const starts = Array.from({ length: Math.ceil(count / stretchRows) }, (_, i) => i * stretchRows);
  return starts.map((start) => (
    <Stretch
      key={start}
      rows={Math.min(stretchRows, count - start)}
      start={start}
      rowPx={rowPx}
      wanted={wanted >= start && wanted < start + stretchRows}
    >
      {children}
    </Stretch>
  ));
}

interface StretchProps {
  readonly start: number;
  readonly rows: number;
  readonly rowPx: number;
  readonly wanted: boolean;
  readonly children: (index: number) => ReactNode;
}

function Stretch({ start, rows, rowPx, wanted, children }: StretchProps) {
  const [near, setNear] = useState(start === 0);
  const watch = useCallback((place: HTMLElement | null) => {
    if (place === null) return;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) setNear(true);
      },
      { root: place.closest('[data-scrolls]'), rootMargin: `${aheadPx}px` },
    );
    observer.observe(place);
    return () => observer.disconnect();
  }, []);
  if (near || wanted) return Array.from({ length: rows }, (_, i) => children(start + i));
  return <div ref={watch} role="presentation" style={{ height: rows * rowPx }} />;
}
