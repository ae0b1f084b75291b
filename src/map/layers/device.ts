import type { PlannerStore } from '../../state/store'
import { pixelsPerMetre } from '../mercator'
import type { Painter } from './canvas-layer'

/** Where the device is: a dot, and the ring within which it may as well be. */
export function devicePainter(store: PlannerStore): Painter {
  return frame => {
    const { device } = store.getState().view
    if (device === null) return
    const { context, palette } = frame
    const { x, y } = frame.toCanvas(device.at)
    const radius = device.radius * pixelsPerMetre(device.at[1], frame.worldSize)
    context.beginPath()
    context.arc(x, y, radius, 0, 2 * Math.PI)
    context.globalAlpha = 0.12
    context.fillStyle = palette.accent
    context.fill()
    context.globalAlpha = 1
    context.setLineDash([4, 3])
    context.lineWidth = 2
    context.strokeStyle = palette.accent
    context.stroke()
    context.setLineDash([])
    context.beginPath()
    context.arc(x, y, 5, 0, 2 * Math.PI)
    context.fillStyle = palette.accent
    context.fill()
    context.strokeStyle = palette.paper
    context.stroke()
  }
}
