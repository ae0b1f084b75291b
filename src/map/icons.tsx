import type { ReactNode } from 'react'
import type { Tool } from '../state/store'

/** Signs of the draw bar, drawn like the marks on the map; the words beside them carry the meaning. */
export type IconName =
  | Exclude<Tool, 'hole'>
  | 'fold'
  | 'unfold'
  | 'finish'
  | 'back'
  | 'cancel'
  | 'corner'
  | 'several'
  | 'snap'

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg
      className="icon"
      viewBox="0 0 24 24"
      width="24"
      height="24"
      fill="none"
      stroke="currentColor"
      strokeWidth="1.7"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      {drawings[name]}
    </svg>
  )
}

const field = 'M4.5 7.5 18 4.5l2 12.5-14.5 2.5z'

function dots(...places: readonly (readonly [x: number, y: number])[]): ReactNode {
  return places.map(([x, y]) => <circle key={`${x} ${y}`} cx={x} cy={y} r="1.7" fill="currentColor" stroke="none" />)
}

const drawings: Readonly<Record<IconName, ReactNode>> = {
  select: <path d="M6 3.5v15l4-3.8 2.7 5.8 2.6-1.2-2.7-5.7 5.4-.5z" />,
  box: (
    <>
      <path d="M4 4h16v16H4z" strokeDasharray="3.2 2.8" />
      {dots([9, 9], [15, 12], [10, 15.5])}
    </>
  ),
  row: (
    <>
      <path d="M3 17.5 21 6.5" strokeWidth="1.1" />
      {dots([4.5, 16.6], [9.5, 13.5], [14.5, 10.5], [19.5, 7.4])}
    </>
  ),
  rows: (
    <>
      <path d="M3 9 16 3M5.5 15l13-6M8 21l13-6" strokeWidth="1.1" />
      {dots([6, 7.6], [13, 4.4], [8.5, 13.6], [15.5, 10.4], [11, 19.6], [18, 16.4])}
    </>
  ),
  block: (
    <>
      <path d={field} strokeWidth="1.3" />
      {dots([8.3, 9.9], [12.2, 9.1], [16.1, 8.3], [9, 14.6], [12.9, 13.8], [16.8, 13])}
    </>
  ),
  plant: (
    <>
      <circle cx="12" cy="12" r="7.5" />
      {dots([12, 12])}
    </>
  ),
  bed: (
    <>
      <path d={field} strokeWidth="1.3" />
      <path d="M8.5 11.5v4M12 10.5v4M15.6 9.7v4" />
    </>
  ),
  station: (
    <>
      <rect x="4.5" y="4.5" width="15" height="15" rx="3.5" />
      {dots([12, 8.7], [8.7, 14.3], [15.3, 14.3])}
    </>
  ),
  forage: (
    <>
      <circle cx="12" cy="12" r="2" />
      <path
        d="M12 10c-3-2.2-2.6-6 0-6.5 2.6.5 3 4.3 0 6.5M13.9 11.4c1.2-3.5 4.9-4.2 6.2-1.9.3 2.6-3.2 4-6.2 1.9M13.2 13.6c3.7 0 5.5 3.3 3.7 5.3-2.5.9-4.8-2.1-3.7-5.3M10.8 13.6c1.1 3.2-1.2 6.2-3.7 5.3-1.8-2 0-5.3 3.7-5.3M10.1 11.4c-3 2.1-6.5.7-6.2-1.9 1.3-2.3 5-1.6 6.2 1.9"
        strokeWidth="1.3"
      />
    </>
  ),
  mud: <path d="M12 3.5c3.5 4.7 5.8 7.8 5.8 11a5.8 5.8 0 0 1-11.6 0c0-3.2 2.3-6.3 5.8-11z" />,
  keepout: (
    <>
      <path d={field} />
      <path d="M6 15.5 13.5 5.7M9.5 18.6 17.5 8M14.5 17.7l4.5-6" strokeWidth="1.2" />
    </>
  ),
  boundary: <path d={field} strokeDasharray="5.5 3.2" />,
  windbreak: <path d="M3 17.5 21 8.5M5.5 16.2 4 11.5M10 14l-1.5-4.7M14.5 11.7 13 7M19 9.5l-1.5-4.7" />,
  tape: (
    <>
      <path d="M3 9h18v7H3z" />
      <path d="M7 9v3M11 9v4M15 9v3M19 9v3" strokeWidth="1.2" />
    </>
  ),
  // The bar stands at the right edge and folds towards it.
  fold: <path d="m9.5 6 6 6-6 6" />,
  unfold: <path d="m14.5 6-6 6 6 6" />,
  finish: <path d="m4.5 12.5 5 5 10-11" />,
  back: <path d="M9 5 4 10l5 5M4 10h10a5.5 5.5 0 0 1 0 11h-3" />,
  cancel: <path d="m6 6 12 12M18 6 6 18" />,
  corner: (
    <>
      <path d="M4.5 19.5V8.5a4 4 0 0 1 4-4h3" strokeDasharray="3 3" />
      <path d="M14 14h6.5" />
    </>
  ),
  snap: <path d="M6 4v8a6 6 0 0 0 12 0V4h-4v8a2 2 0 0 1-4 0V4zM6 8h4M14 8h4" />,
  several: (
    <>
      <path d="M4 9 15 4M6.5 14.5l11-5M9 20l11-5" />
    </>
  ),
}
