import type { Feature } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { middleOf } from '../mercator'
import { stationHalf } from '../tools/hit'
import { positionsOf } from '../tools/positions'
import type { Frame } from './canvas-layer'
import { type Box, boxAround, type LabelWish, placeLabels } from './label-placement'
import { type NamedMark, sharedNames } from './shared-names'

const height = 16
/** A shape smaller than this on the screen shows no name, pixels. */
const least = 30

/**
 * Names of things, where there is room: stations first, then the larger shapes. None lies over another or a station.
 * `captions` are told instead of a thing's name.
 */
export function paintNames(
  frame: Frame,
  features: readonly Feature[],
  hidden: ReadonlySet<string>,
  { suggested, captions }: { readonly suggested: readonly LngLat[]; readonly captions: ReadonlyMap<string, string> },
): void {
  const { context, palette, view } = frame
  context.font = `600 12px ${palette.font}`
  const wishes: LabelWish[] = []
  const taken: Box[] = suggested.map(at => {
    const { x, y } = frame.toCanvas(at)
    return boxAround(x, y, 2 * stationHalf, 2 * stationHalf)
  })
  const shared = sharedNames(singlePlants(frame, features, hidden), name => context.measureText(name).width)
  for (const feature of features) {
    if (hidden.has(feature.id) || shared.get(feature.id) === null) continue
    const { kind } = feature.properties
    const name = captions.get(feature.id) ?? shared.get(feature.id) ?? feature.properties.name
    const places = positionsOf(feature.geometry).map(frame.toCanvas)
    const isStation = kind === 'station'
    if (isStation) taken.push(boxAround(places[0]!.x, places[0]!.y, 2 * stationHalf, 2 * stationHalf))
    if (!name || !places.some(({ x, y }) => isInView(x, y, view))) continue
    const size = extentOf(places)
    if (!isMark(feature) && size < least) continue
    const wish = { id: feature.id, text: name, width: context.measureText(name).width, height }
    wishes.push({
      ...wish,
      anchors: anchorsOf(feature, frame, wish.width),
      priority: priorityOf(feature, size),
    })
  }
  context.textAlign = 'center'
  context.textBaseline = 'middle'
  context.lineJoin = 'round'
  for (const { text, x, y } of placeLabels(wishes, taken, view)) {
    context.lineWidth = 4
    context.strokeStyle = palette.paper
    context.strokeText(text, x, y)
    context.fillStyle = palette.ink
    context.fillText(text, x, y)
  }
}

/** Single plants in view by their names: hundreds of a row would leave no room for anything else. */
function singlePlants(frame: Frame, features: readonly Feature[], hidden: ReadonlySet<string>): readonly NamedMark[] {
  return features.flatMap(({ id, properties, geometry }) => {
    if (properties.kind !== 'plant' || geometry.type !== 'Point' || !properties.name || hidden.has(id)) return []
    const { x, y } = frame.toCanvas(geometry.coordinates as LngLat)
    return isInView(x, y, frame.view) ? [{ id, name: properties.name, x, y }] : []
  })
}

/** Plantings before the ground round them: a boundary is large and says little. */
function priorityOf(feature: Feature, size: number): number {
  switch (feature.properties.kind) {
    case 'station':
      return 1e6
    case 'boundary':
    case 'keepout':
    case 'windbreak':
      return 1
    default:
      return isMark(feature) ? 10 : size
  }
}

function isMark({ geometry }: Feature): boolean {
  return geometry.type === 'Point' || geometry.type === 'MultiPoint'
}

function anchorsOf(feature: Feature, frame: Frame, width: number): readonly { x: number; y: number }[] {
  const positions = positionsOf(feature.geometry)
  const { x, y } = frame.toCanvas(middleOf(positions))
  if (isMark(feature)) {
    const first = frame.toCanvas(positions[0]!)
    // Clear of the mark and of what is kept free round it and the name.
    const clear = stationHalf + 7
    return [
      { x: first.x, y: first.y + clear + height / 2 },
      { x: first.x, y: first.y - clear - height / 2 },
      { x: first.x + clear + width / 2, y: first.y },
      { x: first.x - clear - width / 2, y: first.y },
    ]
  }
  if (feature.properties.kind === 'boundary') {
    const top = Math.min(...positions.map(at => frame.toCanvas(at).y))
    return [{ x, y: top - height }]
  }
  return [
    { x, y },
    { x, y: y - height },
    { x, y: y + height },
  ]
}

function extentOf(places: readonly { x: number; y: number }[]): number {
  const xs = places.map(({ x }) => x)
  const ys = places.map(({ y }) => y)
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
}

function isInView(x: number, y: number, view: Box): boolean {
  return x >= view.left && x <= view.right && y >= view.top && y <= view.bottom
}
