/** Layers of the picture, lowest first. The device's place and what is being drawn are no part of a plan. */
const layers = ['ground', 'shapes', 'plants', 'marks'] as const

/**
 * The map as it is in sight, as PNG: the metre grid and the plan on it. Tiles and images beneath stay out: tiles belong
 * to the server they come from, and the browser hands out no picture with another server's pixels in it.
 */
export async function mapPicture(): Promise<Blob> {
  const host = document.querySelector<HTMLElement>('.map')
  const frame = host?.getBoundingClientRect()
  if (!host || !frame || frame.width < 1 || frame.height < 1) {
    throw new Error('the map is not in sight. Close what lies over it and try again.')
  }
  const ratio = Math.min(window.devicePixelRatio || 1, 2)
  const picture = document.createElement('canvas')
  picture.width = Math.round(frame.width * ratio)
  picture.height = Math.round(frame.height * ratio)
  const context = picture.getContext('2d')
  if (context === null) throw new Error('this browser could not draw it.')
  context.fillStyle = getComputedStyle(host).backgroundColor
  context.fillRect(0, 0, picture.width, picture.height)
  context.scale(ratio, ratio)
  for (const layer of layers) {
    for (const canvas of host.querySelectorAll<HTMLCanvasElement>(`.leaflet-${layer}-pane canvas`)) {
      const { left, top, width, height } = canvas.getBoundingClientRect()
      if (canvas.width > 0 && canvas.height > 0) {
        context.drawImage(canvas, left - frame.left, top - frame.top, width, height)
      }
    }
  }
  return new Promise((resolve, reject) => {
    picture.toBlob(blob => {
      if (blob === null) reject(new Error('this browser could not draw it.'))
      else resolve(blob)
    }, 'image/png')
  })
}
