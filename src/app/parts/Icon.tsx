/** Icons on one grid of 20 units, one stroke of 1.5, drawn for this work. An icon is never alone: the control that
 *  carries it has a word or a name for screen readers. */
const paths = {
  floor: 'M3 5h9v4h5v6H3z',
  openings: 'M2 15h4M14 15h4M6 15V5a10 10 0 0 1 8 10z',
  obstacles: 'M3 3h6v6H3zM14.5 6a2.5 2.5 0 1 1 0 5a2.5 2.5 0 1 1 0-5M3 13h6v4H3zM13 14h4v3h-4z',
  joints: 'M3 4h14v12H3zM10 4v3M10 9v2M10 13v3M3 10h3M8 10h2',
  coverings: 'M3 4h14v12H3zM3 8h14M3 12h14M8 4v4M12 8v4M7 12v4',
  papers: 'M5 2h7l4 4v12H5zM12 2v4h4M8 10h5M8 13h5',
  choose: 'M5 3l10 7-5 1.2L13 17l-2 1-2.6-5.6L5 15z',
  room: 'M3 4h14v12H3zM7 10h6M10 7v6',
  hole: 'M3 3h14v14H3zM7 7h6v6H7zM7 13l6-6',
  column: 'M6 6h8v8H6zM3 10h3M14 10h3M10 3v3M10 14v3',
  pipe: 'M10 5a5 5 0 1 1 0 10a5 5 0 1 1 0-10M10 9.5v1M9.5 10h1',
  joinery: 'M3 5h14v6H3zM10 5v6M3 15h14',
  contact: 'M4 4h12v12H4zM4 10l6-6M4 16 16 4M10 16l6-6',
  building: 'M8 2v16M12 2v16M3 10h5M12 10h5',
  clear: 'M4 4h3M10 4h3M16 4v3M16 10v3M16 16h-3M10 16H7M4 16v-3M4 10V7M8 10h4',
  joint: 'M3 17 17 3M5 13v4h4',
  findings: 'M10 18v-6M10 2l5 5-5 5-5-5z',
  open: 'M3 16V4h5l2 2h7v10zM10 14V9M7.5 11.5 10 9l2.5 2.5',
  save: 'M3 16h14M10 3v9M6.5 8.5 10 12l3.5-3.5',
  empty: 'M4 3h12v14H4zM10 7v6M7 10h6',
  plans: 'M3 7h10v10H3zM6 7V5h9v9h-2M8.5 5V3H17v8.5h-2',
  remove: 'M4 5.5h12M8 5.5V3h4v2.5M5.5 5.5l.8 11.5h7.4l.8-11.5M10 8.5v5.5',
  undo: 'M7 4 3 8l4 4M3 8h8a5 5 0 0 1 0 10H8',
  redo: 'M13 4l4 4-4 4M17 8H9a5 5 0 0 0 0 10h3',
  light:
    'M10 6.5a3.5 3.5 0 1 1 0 7a3.5 3.5 0 1 1 0-7M10 1.5v2M10 16.5v2M1.5 10h2M16.5 10h2M4 4l1.4 1.4M14.6 14.6 16 16M4 16l1.4-1.4M14.6 5.4 16 4',
  dark: 'M16 12.5A7 7 0 0 1 7.5 4a7 7 0 1 0 8.5 8.5z',
  nearer: 'M10 4v12M4 10h12',
  farther: 'M4 10h12',
  fit: 'M3 7V3h4M13 3h4v4M17 13v4h-4M7 17H3v-4M7 7h6v6H7z',
  close: 'M5 5l10 10M15 5 5 15',
  fold: 'M8 4l6 6-6 6',
  key: 'M3 5h6M3 10h2M7 10h2M3 15h1M6 15h1M9 15h.01M12 5h5M12 10h5M12 15h5',
  source: 'M4 3h12v11l-3 3H4zM13 17v-3h3M7 7h6M7 10h6',
  fault: 'M10 2l8 8-8 8-8-8zM10 6v5M10 13.5v.01',
  caution: 'M10 3l8 14H2zM10 8.5v4M10 14.5v.01',
  note: 'M10 2.5a7.5 7.5 0 1 1 0 15 7.5 7.5 0 0 1 0-15M10 9.5v4.5M10 6.5v.01',
  help: 'M10 2.5a7.5 7.5 0 1 1 0 15 7.5 7.5 0 0 1 0-15M7.5 8a2.5 2.5 0 1 1 3.6 2.2c-.8.4-1.1.8-1.1 1.8M10 14.5v.01',
  setOut: 'M5.5 18V8M8 5.5h10M6 12h6V6M5.5 3a2.5 2.5 0 1 1 0 5a2.5 2.5 0 1 1 0-5',
  point: 'M10 2v16M2 10h16M10 5.5a4.5 4.5 0 1 1 0 9a4.5 4.5 0 1 1 0-9',
  within: 'M4 10.5l4 4 8-9',
} as const;

export type IconName = keyof typeof paths;

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 20 20" aria-hidden="true">
      <path d={paths[name]} />
    </svg>
  );
}
