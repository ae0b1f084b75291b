import { type ReactNode, useEffect, useId, useRef } from 'react'
import { ErrorBoundary } from '../../parts/error-boundary'

type Props = {
  readonly title: string
  readonly onClose: () => void
  readonly children: ReactNode
  readonly className?: string
  /** Kept as it is, behind another view. */
  readonly isHidden?: boolean
  /** Escape in a field is for the field alone: much would be lost with the view. */
  readonly isKeptByFields?: boolean
  /** Beside the button that closes it. */
  readonly actions?: ReactNode
}

/** A view beside the map, on a phone over it or below it. */
export function Side({
  title,
  onClose,
  children,
  className = '',
  isHidden = false,
  isKeptByFields = false,
  actions = null,
}: Props) {
  const id = useId()
  const heading = useRef<HTMLHeadingElement>(null)
  // Whoever asked for it is led there, and back to where they were when it goes.
  useEffect(() => {
    const before = document.activeElement
    heading.current?.focus()
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus()
    }
  }, [])
  return (
    <section
      className={`aside ${className}`}
      hidden={isHidden}
      aria-labelledby={id}
      onKeyDown={event => {
        const isOfField =
          isKeptByFields && event.target instanceof Element && event.target.matches('input, textarea, select')
        if (event.key === 'Escape' && !isOfField) onClose()
      }}
    >
      <div className="aside-head">
        <h2 id={id} ref={heading} tabIndex={-1}>
          {title}
        </h2>
        {actions}
        <button type="button" className="quiet" onClick={onClose}>
          Close
        </button>
      </div>
      <div className="aside-body">
        <ErrorBoundary what={title}>{children}</ErrorBoundary>
      </div>
    </section>
  )
}
