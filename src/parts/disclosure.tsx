import type { ReactNode } from 'react'

type Props = {
  readonly summary: ReactNode
  readonly children: ReactNode
  readonly isOpen?: boolean
}

/** Something that is folded away until it is asked for. */
export function Disclosure({ summary, children, isOpen = false }: Props) {
  return (
    <details className="disclosure" open={isOpen}>
      <summary>{summary}</summary>
      <div className="disclosure-body">{children}</div>
    </details>
  )
}
