import type { Frame } from './canvas-layer'

const patterns = new Map<string, CanvasPattern | null>()

/** Diagonal hatching in one colour, lines `gap` pixels apart; null where the canvas knows no patterns. */
export function hatch(context: CanvasRenderingContext2D, colour: string, gap: number): CanvasPattern | null {
  return patternOf(context, { colour, gap }, pen => {
    pen.lineWidth = 1
    pen.beginPath()
    // One stroke across the tile and its neighbours' corners, so that the lines meet where tiles do.
    for (const shift of [-gap, 0, gap]) {
      pen.moveTo(shift, gap)
      pen.lineTo(shift + gap, 0)
    }
    pen.stroke()
  })
}

/** Dots in one colour, `gap` pixels apart. */
function dotting(context: CanvasRenderingContext2D, colour: string, gap: number): CanvasPattern | null {
  return patternOf(context, { colour, gap, isDots: true }, pen => {
    pen.fillRect(gap / 2 - 1, gap / 2 - 1, 2, 2)
  })
}

/** What lies over a shade, so that it does not speak by its tint alone. */
export type Cover = { readonly colour: string; readonly gap: number; readonly isDots?: boolean }

/** The pattern of a cover, which stands still on the ground and not on the screen. */
export function coverPattern({ context, left, top }: Frame, { colour, gap, isDots }: Cover): CanvasPattern | null {
  const pattern = isDots ? dotting(context, colour, gap) : hatch(context, colour, gap)
  pattern?.setTransform(new DOMMatrix([1, 0, 0, 1, -(left % gap), -(top % gap)]))
  return pattern
}

function patternOf(
  context: CanvasRenderingContext2D,
  { colour, gap, isDots = false }: Cover,
  draw: (pen: CanvasRenderingContext2D) => void,
): CanvasPattern | null {
  const key = `${colour} ${gap} ${isDots}`
  const known = patterns.get(key)
  if (known !== undefined) return known
  const tile = document.createElement('canvas')
  tile.width = gap
  tile.height = gap
  const pen = tile.getContext('2d')
  if (pen === null) return null
  pen.strokeStyle = colour
  pen.fillStyle = colour
  draw(pen)
  const pattern = context.createPattern(tile, 'repeat')
  patterns.set(key, pattern)
  return pattern
}
