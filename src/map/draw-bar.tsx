import {
  type FocusEvent,
  type KeyboardEvent,
  useCallback,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react'
import { OnDrawDesk } from '../parts/draw-desk'
import { useMedia } from '../parts/use-media'
import { setTool, setView } from '../state/actions'
import type { Tool } from '../state/store'
import { usePlanner, usePlannerStore } from '../state/use-planner'
import { FigureFields } from './figure-fields'
import { focusMap } from './figure-focus'
import type { Hand } from './hand'
import { Icon, type IconName } from './icons'
import { hintFor, pictureHint } from './tools/hints'
import type { ToolEvent } from './tools/tool'
import './draw-bar.css'

/** A hole is begun on the card of the ground that it is cut into. */
const tools: readonly { readonly tool: Exclude<Tool, 'hole'>; readonly words: string }[] = [
  { tool: 'select', words: 'Select' },
  { tool: 'box', words: 'Select by box' },
  { tool: 'row', words: 'Row' },
  { tool: 'rows', words: 'Block by rows' },
  { tool: 'block', words: 'Block' },
  { tool: 'plant', words: 'Plant' },
  { tool: 'bed', words: 'Bed' },
  { tool: 'station', words: 'Nest station' },
  { tool: 'forage', words: 'Forage' },
  { tool: 'mud', words: 'Mud' },
  { tool: 'keepout', words: 'No stations here' },
  { tool: 'boundary', words: 'Boundary' },
  { tool: 'windbreak', words: 'Windbreak' },
  { tool: 'tape', words: 'Measure' },
]

type Props = { readonly hand: Hand }

/** The drawing tools at the edge of the map, and beside them what to do next with the one in hand. */
export function DrawBar({ hand }: Props) {
  const store = usePlannerStore()
  const bar = useRef<HTMLDivElement>(null)
  const focusTool = () => {
    // By the store, because the button itself does not show yet that it is the one in hand.
    bar.current?.querySelector<HTMLElement>(`[data-stop="${store.getState().view.tool}"]`)?.focus()
  }
  return (
    <div className="draw-bar">
      <Toolbar barRef={bar} />
      <UnderWay hand={hand} onGone={focusTool} />
    </div>
  )
}

function isNarrow(): boolean {
  return typeof matchMedia === 'function' && matchMedia('(max-width: 700px)').matches
}

/** One stop of the Tab key; the arrow keys go from button to button. */
function Toolbar({ barRef }: { readonly barRef: React.RefObject<HTMLDivElement | null> }) {
  const store = usePlannerStore()
  const inHand = usePlanner(state => state.view.tool)
  const isFolded = usePlanner(state => state.view.toolsFolded)
  const [stop, setStop] = useState<string | null>(null)
  const current = stop ?? (inHand === 'hole' ? 'select' : inHand)

  const reach = useReach(barRef)

  const choose = (tool: Tool) => {
    const next = inHand === tool ? 'select' : tool
    setTool(store, next)
    // Keys draw from now on: the cross, S and the digits are the map's.
    if (next !== 'select') focusMap()
    // On a phone drawing wants the map: the sheet below it makes room.
    if (next !== 'select' && isNarrow()) setView(store, { sheet: 'third' })
  }
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const buttons = [...event.currentTarget.querySelectorAll('button')]
    const next = nextIndex(event.key, buttons.indexOf(event.target as HTMLButtonElement), buttons.length)
    if (next === null) return
    event.preventDefault()
    buttons[next]?.focus()
  }
  const onFocus = (event: FocusEvent<HTMLDivElement>) => setStop(event.target.dataset.stop ?? null)
  const onBlur = (event: FocusEvent<HTMLDivElement>) => {
    if (!event.currentTarget.contains(event.relatedTarget)) setStop(null)
  }
  return (
    <div
      ref={barRef}
      className="draw-tools scroll-cue"
      role="toolbar"
      aria-label="Drawing tools"
      data-folded={isFolded}
      onKeyDown={onKeyDown}
      onFocus={onFocus}
      onBlur={onBlur}
      onScroll={reach.watch}
    >
      {tools.map(({ tool, words }) => (
        <button
          key={tool}
          type="button"
          data-stop={tool}
          tabIndex={current === tool ? 0 : -1}
          aria-pressed={inHand === tool}
          title={isFolded ? words : undefined}
          onClick={() => choose(tool)}
        >
          <Icon name={tool} />
          <span className={isFolded ? 'unseen' : 'draw-words'}>{words}</span>
        </button>
      ))}
      <button
        type="button"
        className="draw-fold"
        data-stop="fold"
        tabIndex={current === 'fold' ? 0 : -1}
        title={isFolded ? 'Show the words' : undefined}
        onClick={() => setView(store, { toolsFolded: !isFolded })}
      >
        <Icon name={isFolded ? 'unfold' : 'fold'} />
        <span className={isFolded ? 'unseen' : 'draw-words'}>{isFolded ? 'Show the words' : 'Hide the words'}</span>
      </button>
      {reach.isCut ? (
        <button type="button" className="draw-more" data-stop="more" tabIndex={-1} onClick={reach.next}>
          <Icon name={reach.isMore ? 'fold' : 'unfold'} />
          <span className="draw-words">{reach.isMore ? 'More tools' : 'First tools'}</span>
        </button>
      ) : null}
    </div>
  )
}

/** Whether a row of tools goes on beyond the edge of a phone's screen, and whether there is more at its end. */
function useReach(bar: React.RefObject<HTMLDivElement | null>) {
  const [reach, setReach] = useState({ isCut: false, isMore: false })
  const watch = useCallback(() => {
    const { scrollWidth = 0, clientWidth = 0, scrollLeft = 0 } = bar.current ?? {}
    const isCut = scrollWidth - clientWidth > slack
    const isMore = scrollWidth - clientWidth - scrollLeft > slack
    setReach(before => (before.isCut === isCut && before.isMore === isMore ? before : { isCut, isMore }))
  }, [bar])
  useEffect(() => {
    watch()
    if (bar.current === null || typeof ResizeObserver === 'undefined') return
    const observer = new ResizeObserver(watch)
    observer.observe(bar.current)
    return () => observer.disconnect()
  }, [bar, watch])
  /** On by as many tools as the screen shows, so that none is passed over; from the end back to the first. */
  const next = () => {
    const { clientWidth = 0, scrollLeft = 0 } = bar.current ?? {}
    bar.current?.scrollTo({ left: reach.isMore ? scrollLeft + clientWidth - moreWidth : 0 })
  }
  return { ...reach, watch, next }
}

/** Widths are rounded to whole pixels, and a bar may stop a little short of its end. */
const slack = 8
/** The button that goes on lies over the last tool, which is to be seen after it; pixels. */
const moreWidth = 160

function nextIndex(key: string, at: number, count: number): number | null {
  switch (key) {
    case 'ArrowDown':
    case 'ArrowRight':
      return (at + 1) % count
    case 'ArrowUp':
    case 'ArrowLeft':
      return (at - 1 + count) % count
    case 'Home':
      return 0
    case 'End':
      return count - 1
    default:
      return null
  }
}

/** What to do next, and the steps that are open now. The live region stays in place, so that changes of it are read out. */
function UnderWay({ hand, onGone }: Props & { readonly onGone: () => void }) {
  const store = usePlannerStore()
  const tool = usePlanner(state => state.view.tool)
  const isPanelFolded = usePlanner(state => state.view.panelFolded)
  const isWide = useMedia('(min-width: 701px)')
  const status = useSyncExternalStore(hand.subscribe, hand.status)
  const [areFieldsOpen, setFieldsOpen] = useState<boolean | null>(null)
  const [lastTool, setLastTool] = useState(tool)
  // Opened for one tool: over a phone's map they would cover half of the next one's ground.
  if (tool !== lastTool && tool !== 'select') {
    setLastTool(tool)
    if (areFieldsOpen) setFieldsOpen(null)
  }
  const { points, canFinish, hasVertex, isDrawing, isKept, isSnapping, isTurning = false, tapes, picture } = status
  const hasKeys = !useMedia('(max-width: 700px)')
  const hint = picture === null ? hintFor(tool, status) : pictureHint(picture, { hasKeys })
  const isShown = isDrawing || hasVertex || isTurning || picture !== null || tapes > 0
  const tell = (event: ToolEvent) => () => {
    hand.handle(event)
    const now = hand.status()
    // The button goes with its panel, and the focus must not go with it.
    if (!now.isDrawing && !now.hasVertex) onGone()
  }
  const clear = () => {
    hand.clearTapes()
    if (!isDrawing && !hasVertex) onGone()
  }
  return (
    <div className="draw-under-way" data-shown={isShown}>
      <p aria-live="polite">{hint}</p>
      {isDrawing ? (
        <OnDrawDesk isBeside={isWide && !isPanelFolded}>
          <FigureFields key={tool} hand={hand} status={status} isOpen={areFieldsOpen} onToggle={setFieldsOpen} />
        </OnDrawDesk>
      ) : null}
      {isShown ? (
        <div className="draw-steps">
          {canFinish ? <StepButton icon="finish" words="Finish" onPress={tell({ type: 'finish' })} isFirst /> : null}
          {points > 0 ? <StepButton icon="back" words="Take off last point" onPress={tell({ type: 'back' })} /> : null}
          {hasVertex ? (
            <>
              <StepButton icon="corner" words="Remove this corner" onPress={tell({ type: 'remove' })} />
              <button type="button" onClick={tell({ type: 'put' })}>
                Add one after it
              </button>
            </>
          ) : null}
          {isDrawing ? (
            <StepButton
              icon="cancel"
              words={points > 0 ? 'Cancel' : 'Put the tool down'}
              onPress={tell({ type: 'cancel' })}
            />
          ) : null}
          {isDrawing ? (
            <button type="button" aria-pressed={isKept} onClick={() => hand.keep(!isKept)}>
              <Icon name="several" />
              {tool === 'box' ? 'Several boxes' : 'Draw several'}
            </button>
          ) : null}
          {picture === null ? null : (
            <button
              type="button"
              onClick={() => {
                setView(store, { picture: null })
                onGone()
              }}
            >
              Done with the picture
            </button>
          )}
          {tapes > 0 ? (
            <button type="button" onClick={clear}>
              {tapes === 1 ? 'Clear the measure' : `Clear ${tapes} measures`}
            </button>
          ) : null}
          {isDrawing && attracts(tool) ? (
            <button type="button" aria-pressed={isSnapping} onClick={() => hand.snap({ isOn: !isSnapping })}>
              <Icon name="snap" />
              {isSnapping ? 'Snapping on' : 'Snapping off'}
            </button>
          ) : null}
        </div>
      ) : null}
    </div>
  )
}

/** Single marks stand where they are put: only lines and outlines fall onto what is there. */
function attracts(tool: Tool): boolean {
  return tool !== 'select' && tool !== 'box' && tool !== 'plant' && tool !== 'station' && tool !== 'mud'
}

type StepButtonProps = {
  readonly icon: IconName
  readonly words: string
  readonly onPress: () => void
  readonly isFirst?: boolean
}

function StepButton({ icon, words, onPress, isFirst = false }: StepButtonProps) {
  return (
    <button type="button" className={isFirst ? 'first' : undefined} onClick={onPress}>
      <Icon name={icon} />
      {words}
    </button>
  )
}
