/**
 * Squares by the hundred thousand, put together as plain pixels: told to the canvas one by one they would stall the map.
 * Edges between pixels are softened as the canvas does it, by the share of the pixel that is covered.
 */
export type Squares = {
  /** A filled square by its middle and side, CSS pixels. */
  add(x: number, y: number, side: number, colour: Rgb): void
  /** Takes all of them away, for the next picture of this size. */
  clear(): void
  /** Puts all of them onto the canvas in place of what was there. */
  put(context: CanvasRenderingContext2D): void
  /** Red, green, blue and opacity of every device pixel, row by row. */
  readonly data: Uint8ClampedArray<ArrayBuffer>
}

export type Rgb = readonly [red: number, green: number, blue: number]

type Size = { readonly width: number; readonly height: number; readonly ratio: number }

/** `ratio`: device pixels to a CSS pixel. */
export function squaresOn({ width, height, ratio }: Size): Squares {
  const across = Math.round(width * ratio)
  const down = Math.round(height * ratio)
  const data = new Uint8ClampedArray(4 * across * down)
  const nothing = { left: across, top: down, right: 0, bottom: 0 }
  // Only this much has to be handed over.
  let used = { ...nothing }
  return {
    data,
    add(x, y, side, colour) {
      const half = (side * ratio) / 2
      const [left, right] = [x * ratio - half, x * ratio + half]
      const [top, bottom] = [y * ratio - half, y * ratio + half]
      const lastColumn = Math.min(across, Math.ceil(right))
      const lastRow = Math.min(down, Math.ceil(bottom))
      const firstColumn = Math.max(0, Math.floor(left))
      const firstRow = Math.max(0, Math.floor(top))
      used.left = Math.min(used.left, firstColumn)
      used.top = Math.min(used.top, firstRow)
      used.right = Math.max(used.right, lastColumn)
      used.bottom = Math.max(used.bottom, lastRow)
      for (let row = firstRow; row < lastRow; row += 1) {
        const share = Math.min(bottom, row + 1) - Math.max(top, row)
        for (let column = firstColumn; column < lastColumn; column += 1) {
          const covered = share * (Math.min(right, column + 1) - Math.max(left, column))
          blend(data, 4 * (row * across + column), covered, colour)
        }
      }
    },
    clear() {
      data.fill(0)
      used = { ...nothing }
    },
    put(context) {
      const { left, top, right, bottom } = used
      if (right <= left || bottom <= top) return
      context.putImageData(new ImageData(data, across, down), 0, 0, left, top, right - left, bottom - top)
    },
  }
}

/** A colour over what a pixel has already, both with their opacity. */
function blend(data: Uint8ClampedArray, at: number, opacity: number, colour: Rgb): void {
  const under = (data[at + 3]! / 255) * (1 - opacity)
  const whole = opacity + under
  if (whole === 0) return
  const share = opacity / whole
  for (let i = 0; i < 3; i += 1) data[at + i] = data[at + i]! + (colour[i]! - data[at + i]!) * share
  data[at + 3] = 255 * whole
}

const known = new Map<string, Rgb>()

/** A colour of a style sheet as numbers; the canvas knows every way to write one. */
export function rgbOf(context: CanvasRenderingContext2D, colour: string): Rgb {
  const found = known.get(colour)
  if (found) return found
  const before = context.fillStyle
  context.fillStyle = colour
  const written = String(context.fillStyle)
  context.fillStyle = before
  const digits = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(written)?.slice(1) ?? ['0', '0', '0']
  const [red = 0, green = 0, blue = 0] = digits.map(each => Number.parseInt(each, 16))
  const rgb: Rgb = [red, green, blue]
  known.set(colour, rgb)
  return rgb
}
