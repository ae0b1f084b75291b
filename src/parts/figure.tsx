import type { ReactNode } from 'react'

type Props = {
  readonly children: ReactNode
  readonly onExplain: () => void
  /** What the figure is, for those who hear it alone. */
  readonly label: string
}

/** A computed figure: a quiet underline, and pressing it asks how it was worked out. */
export function Figure({ children, onExplain, label }: Props) {
  return (
    <button type="button" className="figure" onClick={onExplain} title="How was this worked out?">
      {children}
      <span className="unseen">, {label}: how was this worked out?</span>
    </button>
  )
}
