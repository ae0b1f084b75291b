import type { Edit } from '#geo/plan/edits'
import type { Feature, FeatureKind, Geometry, Picture, Plan } from '#geo/plan/plan'
import type { LngLat, Metres, Plane } from '#geo/space/plane'
import type { Tape } from './tape'

/** Position on the screen, CSS pixels from the top left of the map. */
export type Pixel = { readonly x: number; readonly y: number }

export type PointerKind = 'mouse' | 'touch' | 'pen' | 'keyboard'

export type Keys = { readonly shift: boolean; readonly alt: boolean }

type Pointed<T extends string> = {
  readonly type: T
  readonly at: LngLat
  readonly pixel: Pixel
  readonly keys: Keys
  readonly pointer: PointerKind
}

/**
 * What a person did. A press that stays where it is becomes a tap; a press that a tool captures and that moves becomes
 * drags and a release; a press that no tool captures moves the map and is not heard of again.
 */
export type ToolEvent =
  | Pointed<'press'>
  | Pointed<'drag'>
  | Pointed<'release'>
  | Pointed<'hover'>
  | (Pointed<'tap'> & { readonly count: 1 | 2 })
  /** The press ended without meaning anything: a second finger, a lost pointer. */
  | { readonly type: 'lost' }
  | { readonly type: 'finish'; readonly keys?: Keys }
  | { readonly type: 'cancel' | 'back' | 'remove' }
  /** Move what is chosen by metres east and north; steps with the same key are one step of undo. */
  | { readonly type: 'nudge'; readonly by: Metres; readonly key: string }
  /** Figures typed; null takes one away, and those left out stay. */
  | { readonly type: 'type'; readonly figures: Partial<Figures> }
  /** Set the next point where the typed figures and the pointer say. */
  | { readonly type: 'put' }

/** What can be typed while something is drawn: metres, degrees clockwise from north, whole numbers. */
export type Figures = Readonly<Record<FigureName, number | null>>
export type FigureName = 'length' | 'bearing' | 'plants' | 'spacing' | 'rowSpacing' | 'rows' | 'along'

/** A figure that can be typed now: what was typed, and what it is without. */
export type OpenFigure = { readonly typed: number | null; readonly live: number | null }
export type OpenFigures = { readonly [K in FigureName]?: OpenFigure }

/** What a tool may ask about the world; all of it a function of the plan and the view. */
export type ToolContext = {
  readonly plan: Plan
  readonly year: number
  readonly selection: readonly string[]
  readonly plane: Plane
  /** Points fall onto what is near; absent = they do. */
  readonly isSnapping?: boolean
  /** The tool stays in hand for the next of its kind. */
  readonly isKept?: boolean
  /** Metres that headlands are wide; null or absent = points do not keep that distance. */
  readonly headland?: number | null
  /** What was chosen for plantings drawn from now on; absent = what was drawn last. */
  readonly growing?: Growing
  toPixel(at: LngLat): Pixel
  /** Metres in the row and between rows that a crop has by default; null where it is not known. */
  spacingOf(crop: string): { readonly spacing: number; readonly rowSpacing: number } | null
  newId(kind: FeatureKind): string
}

/** Crop and cultivar of what is drawn next. */
export type Growing = { readonly crop?: string; readonly cultivar?: string }

/** What came of an event. Everything but `state` is optional. */
export type Answer<S> = {
  readonly state: S
  readonly edit?: Edit
  /** Ids to select from now on. */
  readonly selection?: readonly string[]
  /** The tool has done its work. */
  readonly isDone?: boolean
  /** There was nothing to cancel: the tool is to be put down. */
  readonly isLeft?: boolean
  /** The press belongs to the tool: the map must not move with it. */
  readonly isCaptured?: boolean
  /** A single station under way, for live results. */
  readonly station?: { readonly id: string; readonly at: LngLat }
  /** Something measured, to be kept on the map until it is dismissed. */
  readonly tape?: Tape
  /** A sentence to show. */
  readonly notice?: string
}

export type HandleMark =
  | { readonly at: LngLat; readonly role: 'vertex' | 'midpoint' | 'active' | 'snap' | 'first' }
  /** Turns a thing; `stem` is where the line to it begins, `isActive` whether keys turn it now. */
  | { readonly at: LngLat; readonly role: 'turn'; readonly stem: LngLat; readonly isActive: boolean }

/** What is drawn over the plan while something is under way. */
export type Ghost = {
  readonly shapes: readonly { readonly kind: FeatureKind; readonly geometry: Geometry; readonly name?: string }[]
  readonly handles: readonly HandleMark[]
  /** Features of the plan that the ghost stands for and that are not drawn meanwhile. */
  readonly hidden: readonly string[]
  /** What to measure beside the pointer. */
  readonly measure: { readonly kind: FeatureKind; readonly geometry: Geometry; readonly feature?: Feature } | null
  readonly pointer: LngLat | null
  /** Words beside the pointer in place of a measure. */
  readonly says?: string
  /** What the pointer has fallen onto, in words, and the lines it follows. */
  readonly cue?: { readonly words: string; readonly guides: readonly (readonly LngLat[])[] }
  /** What was measured, with its words. */
  readonly tapes?: readonly (Tape & { readonly words: string })[]
  /** A picture as it lies while it is being pulled. */
  readonly picture?: Picture
  /** A line round what is being placed. */
  readonly frame?: readonly LngLat[]
  /** Corners of a selection box. */
  readonly box?: readonly [LngLat, LngLat]
}

/** A tool: a pure step from state and event to a new state, and a picture of the state. */
export type Tool<S> = {
  readonly start: S
  step(state: S, event: ToolEvent, context: ToolContext): Answer<S>
  ghost(state: S, context: ToolContext): Ghost | null
  /** Points set so far; what can be finished, taken off or removed now. */
  status(state: S, context: ToolContext): ToolStatus
}

export type ToolStatus = {
  readonly points: number
  readonly canFinish: boolean
  /** A corner is chosen and can be removed. */
  readonly hasVertex: boolean
  /** The turning grip is chosen: arrow keys turn. */
  readonly isTurning?: boolean
  /** What grows where it is drawn; absent where nothing does. */
  readonly grows?: Required<Growing>
  /** What can be typed now. */
  readonly figures?: OpenFigures
  /** The figure that is asked for now, where it is not the first of the usual order. */
  readonly asked?: FigureName
  /** What `put` would do now, in words for a button; absent where it would do nothing. */
  readonly putWords?: string
}

/** How near counts as "on it", pixels: fingers cover more than mice. */
export function tolerance(pointer: PointerKind): number {
  switch (pointer) {
    case 'touch':
      return 22
    case 'keyboard':
      return 4
    case 'mouse':
    case 'pen':
      return 10
    default:
      return pointer satisfies never
  }
}

export function pixelDistance(a: Pixel, b: Pixel): number {
  return Math.hypot(a.x - b.x, a.y - b.y)
}
