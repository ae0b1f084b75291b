import { type KeyboardEvent, type PointerEvent, type ReactNode, useEffect, useRef } from 'react'
import { dateText } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { closer, farther, panned, type Stretch, zoomed } from './stretch'

type Props = {
  readonly whole: Stretch
  readonly stretch: Stretch
  readonly year: number
  readonly labelWidth: number
  readonly day: number | null
  readonly words: string | null
  readonly onDay: (day: number | null) => void
  readonly onPoint: (day: number | null) => void
  readonly onStretch: (stretch: Stretch) => void
  readonly children: ReactNode
}

/**
 * The picture as a slider of days. Pointing reads a day, pressing and pulling chooses it. Arrow keys, Home, End and the page
 * keys choose; plus, minus and the wheel with the control key zoom; Escape goes back to the season as a whole.
 */
export function DaySlider(props: Props) {
  const { whole, stretch, year, labelWidth, day, words, onDay, onPoint, onStretch, children } = props
  const { from, to } = stretch
  const frame = useRef<HTMLDivElement>(null)
  const dayAt = (clientX: number): number | null => {
    const { left, width } = frame.current!.getBoundingClientRect()
    const share = (clientX - left - labelWidth) / Math.max(1, width - labelWidth)
    return share < 0 ? null : Math.round(from + Math.min(1, share) * (to - from))
  }
  const onPointer = (event: PointerEvent) => {
    const at = dayAt(event.clientX)
    const isPressed = event.buttons % 2 === 1
    if (isPressed && at !== null) onDay(at)
    onPoint(isPressed || event.pointerType === 'touch' ? null : at)
  }
  const zoom = (factor: number, at: number) => onStretch(zoomed(stretch, whole, factor, at))
  const first = Math.ceil(whole.from)
  const last = Math.floor(whole.to)
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const step = steps[event.key]
    const middle = day ?? (from + to) / 2
    if (event.key === 'Home') onDay(first)
    else if (event.key === 'End') onDay(last)
    else if (event.key === 'Escape' && day !== null) onDay(null)
    else if (event.key === '+' || event.key === '=') zoom(closer, middle)
    else if (event.key === '-') zoom(farther, middle)
    else if (event.key === '0') onStretch(whole)
    else if (step !== undefined) onDay(Math.min(last, Math.max(first, day === null ? first : day + step)))
    else return
    event.preventDefault()
    onPoint(null)
  }
  useWheel(frame, event => {
    const at = dayAt(event.clientX) ?? from
    if (event.ctrlKey) zoom(event.deltaY < 0 ? closer : farther, at)
    else if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
      onStretch(panned(stretch, whole, (Math.sign(event.deltaX || event.deltaY) * (to - from)) / 12))
    } else return
    event.preventDefault()
  })
  return (
    <div
      ref={frame}
      className="strip-bands scroll-cue"
      role="slider"
      tabIndex={0}
      aria-label="Day of the season"
      aria-valuemin={first}
      aria-valuemax={last}
      aria-valuenow={Math.min(last, Math.max(first, day ?? first))}
      aria-valuetext={words ?? `${dateText(dateOfDay(first, year))}: choose a day with the arrow keys`}
      onPointerDown={event => {
        event.currentTarget.setPointerCapture?.(event.pointerId)
        onPointer(event)
      }}
      onPointerMove={onPointer}
      onPointerLeave={() => onPoint(null)}
      onKeyDown={onKeyDown}
    >
      {children}
    </div>
  )
}

/** React listens to the wheel without being able to stop the page from zooming. */
function useWheel(frame: { readonly current: HTMLElement | null }, onWheel: (event: WheelEvent) => void): void {
  const latest = useRef(onWheel)
  useEffect(() => {
    latest.current = onWheel
  })
  useEffect(() => {
    const element = frame.current
    const listen = (event: WheelEvent) => latest.current(event)
    element?.addEventListener('wheel', listen, { passive: false })
    return () => element?.removeEventListener('wheel', listen)
  }, [frame])
}

const steps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -7,
  PageUp: 7,
}
