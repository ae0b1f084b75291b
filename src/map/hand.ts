import type { Plan } from '#geo/plan/plan'
import { type LngLat, type Plane, planeAt } from '#geo/space/plane'
import { edit, notify, select, setTool } from '../state/actions'
import { newId } from '../state/new-id'
import { planeOfPlan, settingsOf } from '../state/selectors'
import type { PlannerState, PlannerStore } from '../state/store'
import { homeOf } from '../text/home'
import { createPictureHand } from './picture-hand'
import { createPlaceHand } from './place-hand'
import type { PictureGrip } from './tools/picture-grips'
import { withPlace } from './tools/place-words'
import { type Tape, tapeText } from './tools/tape'
import type { Ghost, Growing, Pixel, ToolContext, ToolEvent, ToolStatus } from './tools/tool'
import { type ToolInUse, toolFor } from './tools/tool-for'

export type HandStatus = ToolStatus & {
  /** A drawing tool is in hand, with or without points set. */
  readonly isDrawing: boolean
  /** The drawing tool stays in hand after each thing drawn. */
  readonly isKept: boolean
  /** Points fall onto what is near. */
  readonly isSnapping: boolean
  /** What hand and keys do with the picture that is being placed; null = none is. */
  readonly picture: PictureGrip['type'] | null
  /** Measures kept on the map. */
  readonly tapes: number
  /** Metres that points keep from edges; null = none. */
  readonly headland: number | null
}

/** The tool in hand: takes what a person does on the map, keeps what is under way, and changes the plan when it is done. */
export type Hand = {
  handle(event: ToolEvent): { readonly isCaptured: boolean }
  ghost(): Ghost | null
  /** The same object until it changes. */
  status(): HandStatus
  /** Whether the drawing tool is to stay in hand for the next of its kind, as it does with Shift. */
  keep(isKept: boolean): void
  /** Whether points fall onto what is near, and at which distance from an edge. */
  snap(change: { readonly isOn?: boolean; readonly headland?: number | null }): void
  /** What grows in plantings drawn from now on; another crop forgets the cultivar of the one before. */
  grow(change: Growing): void
  /** Takes the measures off the map. */
  clearTapes(): void
  /** Told whenever ghost or status may have changed. */
  subscribe(listener: () => void): () => void
  stop(): void
}

export type HandOptions = {
  /** Where a position is on the screen. */
  toPixel(at: LngLat): Pixel
  /** A single station is being moved and is here now. */
  onStationDrag(id: string, at: LngLat): void
  /** The moving has ended, with or without an edit. */
  onStationDragEnd(): void
  /** Where the pointer counts metres from; without it the pointer does not tell its place. */
  readonly origin?: () => LngLat
}

type Manner = { readonly isKept: boolean; readonly isSnapping: boolean; readonly headland: number | null }

/** Beds hardly ever grow what the trees beside them are, and a single plant is often there to pollinate the rows. */
type Chosen = { readonly rows: Growing; readonly plants: Growing; readonly beds: Growing }
const nothingChosen: Chosen = { rows: {}, plants: {}, beds: {} }

const emptyStatus: HandStatus = {
  points: 0,
  canFinish: false,
  hasVertex: false,
  isDrawing: false,
  isKept: false,
  isSnapping: true,
  headland: null,
  tapes: 0,
  picture: null,
}

/** What is under way lives here and not in the store, so that undo and autosave hear of it only when it is done. */
export function createHand(store: PlannerStore, options: HandOptions): Hand {
  const listeners = new Set<() => void>()
  let tool: ToolInUse = toolFor(store.getState().view.tool)
  let status = emptyStatus
  let isStationUnderWay = false
  let manner: Manner = { isKept: false, isSnapping: true, headland: null }
  let tapes: readonly Tape[] = []
  let chosen = nothingChosen
  const places = createPlaceHand(store, options.toPixel)
  const pictures = createPictureHand(store)
  let lastAt: LngLat | null = null

  const context = (): ToolContext | null => contextOf(store.getState(), options.toPixel, lastAt, { ...manner, chosen })

  const ghostOf = (inUse: ToolInUse, now: ToolContext): Ghost | null => {
    const ghost = inUse.ghost(now)
    const { tool: name } = store.getState().view
    return options.origin === undefined || name === 'select' || name === 'box'
      ? ghost
      : withPlace(ghost, options.origin(), now.plan.units)
  }

  const tell = (): void => {
    status = sameWhereEqual(status, {
      ...statusOf(tool, store.getState(), context(), manner, tapes.length),
      picture: pictures.active(),
    })
    for (const listener of [...listeners]) listener()
  }

  const endStation = (): void => {
    if (!isStationUnderWay) return
    isStationUnderWay = false
    options.onStationDragEnd()
  }

  const reset = (): void => {
    const name = store.getState().view.tool
    if (name === 'select') manner = { ...manner, isKept: false }
    tool = toolFor(name)
    endStation()
  }

  const stopWatching = store.subscribe((state, before) => {
    // Measures, headland and what grows belong to the ground of one plan.
    if (state.document.planId !== before.document.planId) {
      tapes = []
      manner = { ...manner, headland: null }
      chosen = nothingChosen
    }
    const isOther = state.view.tool !== before.view.tool || state.document.planId !== before.document.planId
    if (isOther) reset()
    else if (!isSameSubject(state, before)) loseWhatIsGone(state, before)
    else return
    tell()
  })

  /** What is being moved may have been taken away meanwhile. */
  const loseWhatIsGone = (state: PlannerState, before: PlannerState): void => {
    const now = context()
    if (now === null) {
      reset()
      return
    }
    if (state.document.plan === before.document.plan || !isStationUnderWay) return
    if (tool.ghost(now)?.hidden.length) return
    tool.handle({ type: 'lost' }, now)
    endStation()
  }

  tell()
  return {
    handle(event) {
      if ('at' in event) lastAt = event.at
      const now = context()
      if (now === null) return { isCaptured: false }
      const picture = pictures.handle(event, now)
      if (picture !== null) {
        tell()
        return picture
      }
      const taken = store.getState().view.tool === 'select' ? places.handle(event) : null
      if (taken !== null) return taken
      const {
        edit: change,
        selection,
        station,
        notice,
        tape,
        isDone,
        isLeft,
        isCaptured = false,
      } = tool.handle(event, now)
      if (station) {
        isStationUnderWay = true
        options.onStationDrag(station.id, station.at)
      }
      if (change) edit(store, change)
      if (selection) select(store, selection)
      // The edit has already asked for new results; ending before it would ask for the old ones once more.
      if (!station && endsPull(event)) endStation()
      if (isLeft || (isDone && !manner.isKept && !hasShift(event))) setTool(store, 'select')
      if (tape) tapes = [...tapes, tape]
      if (notice) notify(store, notice)
      tell()
      return { isCaptured }
    },
    ghost() {
      const now = context()
      if (now === null) return null
      const ghost = pictures.ghost(now) ?? ghostOf(tool, now)
      return tapes.length === 0 ? ghost : withTapes(ghost, tapes, now)
    },
    status: () => status,
    keep(isKept) {
      manner = { ...manner, isKept }
      tell()
    },
    snap({ isOn = manner.isSnapping, headland = manner.headland }) {
      manner = { ...manner, isSnapping: isOn, headland }
      tell()
    },
    grow({ crop, cultivar }) {
      const ground = groundOf(store.getState())
      const before = chosen[ground]
      const next = crop === undefined ? { ...before } : { crop }
      chosen = { ...chosen, [ground]: { ...next, ...(cultivar === undefined ? {} : { cultivar }) } }
      tell()
    },
    clearTapes() {
      tapes = []
      tell()
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    stop() {
      stopWatching()
      reset()
      listeners.clear()
    },
  }
}

function withTapes(ghost: Ghost | null, tapes: readonly Tape[], { plan }: ToolContext): Ghost {
  const kept = tapes.map(tape => ({ ...tape, words: tapeText(tape, plan.units) }))
  const bare: Ghost = { shapes: [], handles: [], hidden: [], measure: null, pointer: null }
  return { ...(ghost ?? bare), tapes: [...kept, ...(ghost?.tapes ?? [])] }
}

function groundOf({ view }: Pick<PlannerState, 'view'>): keyof Chosen {
  return view.tool === 'bed' ? 'beds' : view.tool === 'plant' ? 'plants' : 'rows'
}

/** Whether a press that pulled something has come to its end, one way or another. */
function endsPull({ type }: ToolEvent): boolean {
  return type === 'release' || type === 'lost' || type === 'cancel' || type === 'tap' || type === 'drag'
}

/** With Shift the tool stays in hand for the next of its kind. */
function hasShift(event: ToolEvent): boolean {
  return 'keys' in event && event.keys?.shift === true
}

function isSameSubject(a: PlannerState, b: PlannerState): boolean {
  const [now, before] = [a.view, b.view]
  if (a.document.plan !== b.document.plan || now.selection !== before.selection) return false
  return now.year === before.year && now.picture === before.picture
}

function statusOf(
  tool: ToolInUse,
  { view }: PlannerState,
  context: ToolContext | null,
  manner: Manner,
  tapes: number,
): HandStatus {
  if (context === null) return { ...emptyStatus, ...manner, tapes }
  return { ...emptyStatus, ...tool.status(context), isDrawing: view.tool !== 'select', ...manner, tapes }
}

function sameWhereEqual(before: HandStatus, after: HandStatus): HandStatus {
  // Figures are small objects made anew each time: compared by what they say.
  return JSON.stringify(before) === JSON.stringify(after) ? before : after
}

function contextOf(
  { document, view }: PlannerState,
  toPixel: HandOptions['toPixel'],
  near: LngLat | null,
  { isKept, isSnapping, headland, chosen }: Manner & { readonly chosen: Chosen },
): ToolContext | null {
  const { plan } = document
  if (plan === null) return null
  return {
    plan,
    year: view.year,
    selection: view.selection,
    plane: planeFor(plan, near),
    isKept,
    isSnapping,
    headland,
    growing: chosen[groundOf({ view })],
    toPixel,
    spacingOf: crop => spacingOf(plan, crop),
    newId,
  }
}

/** Metres in the row and between rows that a crop has in this plan by default. */
export function spacingOf(plan: Plan, crop: string): ReturnType<ToolContext['spacingOf']> {
  const { crops } = settingsOf(plan)
  return Object.hasOwn(crops, crop) ? crops[crop]! : null
}

const bare = new WeakMap<Plan, Plane>()

/** A plan with nothing on it has no middle of its own: where it is first touched serves. */
function planeFor(plan: Plan, near: LngLat | null): Plane {
  if (plan.features.length > 0) return planeOfPlan(plan)
  const known = bare.get(plan)
  if (known) return known
  const plane = planeAt(near ?? homeOf(plan))
  if (near) bare.set(plan, plane)
  return plane
}
