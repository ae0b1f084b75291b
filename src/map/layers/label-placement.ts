export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number }

/** A name that would like to stand centred on the first of its anchors that is free; pixels. */
export type LabelWish = {
  readonly id: string
  readonly text: string
  readonly width: number
  readonly height: number
  readonly anchors: readonly { readonly x: number; readonly y: number }[]
  /** Higher goes first. */
  readonly priority: number
}

export type PlacedLabel = { readonly id: string; readonly text: string; readonly x: number; readonly y: number }

/** Pixels kept free round every name. */
const margin = 3

/** Names one after another, the important first, each where nothing is yet; what finds no room is left out. */
export function placeLabels(wishes: readonly LabelWish[], taken: readonly Box[], view: Box): readonly PlacedLabel[] {
  const boxes: Box[] = [...taken]
  const placed: PlacedLabel[] = []
  for (const wish of wishes.toSorted((a, b) => b.priority - a.priority)) {
    for (const { x, y } of wish.anchors) {
      const box = boxAround(x, y, wish.width, wish.height)
      if (!isWithin(box, view) || boxes.some(other => doOverlap(box, other))) continue
      boxes.push(box)
      placed.push({ id: wish.id, text: wish.text, x, y })
      break
    }
  }
  return placed
}

export function boxAround(x: number, y: number, width: number, height: number): Box {
  const [halfWidth, halfHeight] = [width / 2 + margin, height / 2 + margin]
  return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight }
}

function doOverlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

function isWithin(inner: Box, outer: Box): boolean {
  return (
    inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.bottom <= outer.bottom
  )
}
