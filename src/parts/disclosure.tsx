import { type ReactNode, useState } from 'react'

type Props = {
  readonly summary: ReactNode
  readonly children: ReactNode
  readonly isOpen?: boolean
  /** What is inside is made only when it is first asked for, and stays from then on. */
  readonly isLazy?: boolean
}

/** Something that is folded away until it is asked for. */
export function Disclosure({ summary, children, isOpen = false, isLazy = false }: Props) {
  const [wasOpen, setWasOpen] = useState(isOpen)
  return (
    <details
      className="disclosure"
      open={isOpen}
      onToggle={isLazy ? event => event.currentTarget.open && setWasOpen(true) : undefined}
    >
      <summary>{summary}</summary>
      <div className="disclosure-body">{isLazy && !wasOpen ? null : children}</div>
    </details>
  )
}
