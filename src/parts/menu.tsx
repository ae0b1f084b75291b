import { type FocusEvent, type ReactNode, useId, useRef, useState } from 'react'

type Props = {
  readonly label: string
  readonly children: (close: () => void) => ReactNode
}

/** A button that unfolds a list of things to press below it. Escape, pressing elsewhere or leaving by Tab folds it. */
export function Menu({ label, children }: Props) {
  const [isOpen, setOpen] = useState(false)
  const id = useId()
  const button = useRef<HTMLButtonElement>(null)
  const close = () => {
    setOpen(false)
    button.current?.focus()
  }
  const onBlur = (event: FocusEvent<HTMLDivElement>) => {
    if (!event.currentTarget.contains(event.relatedTarget)) setOpen(false)
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: listens for what happens on the buttons inside
    <div
      className="menu"
      onBlur={onBlur}
      onKeyDown={event => {
        if (event.key === 'Escape' && isOpen) {
          event.stopPropagation()
          close()
        }
      }}
    >
      <button ref={button} type="button" aria-expanded={isOpen} aria-controls={id} onClick={() => setOpen(!isOpen)}>
        {label}
      </button>
      <div className="menu-list" id={id} hidden={!isOpen} tabIndex={-1}>
        {isOpen ? children(close) : null}
      </div>
    </div>
  )
}
