const patterns = new Map<string, CanvasPattern | null>()

/** Diagonal hatching in one colour, lines `gap` pixels apart; null where the canvas knows no patterns. */
export function hatch(context: CanvasRenderingContext2D, colour: string, gap: number): CanvasPattern | null {
  const key = `${colour} ${gap}`
  const known = patterns.get(key)
  if (known !== undefined) return known
  const tile = document.createElement('canvas')
  tile.width = gap
  tile.height = gap
  const pen = tile.getContext('2d')
  if (pen === null) return null
  pen.strokeStyle = colour
  pen.lineWidth = 1
  pen.beginPath()
  // One stroke across the tile and its neighbours' corners, so that the lines meet where tiles do.
  for (const shift of [-gap, 0, gap]) {
    pen.moveTo(shift, gap)
    pen.lineTo(shift + gap, 0)
  }
  pen.stroke()
  const pattern = context.createPattern(tile, 'repeat')
  patterns.set(key, pattern)
  return pattern
}
