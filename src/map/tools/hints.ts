import type { Tool } from '../../state/store'
import { counted } from '../../text/words'
import type { PictureGrip } from './picture-grips'
import type { ToolStatus } from './tool'

/** What hand and keys do with the picture that is being placed. */
export function pictureHint(grip: PictureGrip['type'], { hasKeys }: { readonly hasKeys: boolean }): string {
  if (!hasKeys) return 'Pull the picture to move it, a corner to resize it, the round mark to turn it.'
  switch (grip) {
    case 'move':
      return 'Pull the picture to move it, a corner to resize it, the round mark to turn it. Arrow keys move it; Enter goes on to turning.'
    case 'turn':
      return 'Left and right turn the picture by a degree; Enter goes on to its size.'
    case 'size':
      return 'Up and down make the picture a hundredth larger or smaller; Enter goes back to moving it.'
    default:
      return grip satisfies never
  }
}

const turning = 'Pull the round mark, or turn it with left and right: a degree, with Shift ten, with Alt a tenth.'
const corner = 'A corner is chosen. Pull it, move it with the arrow keys, remove it, or add one after it (Insert).'

/** What to do next with the tool in hand, in a sentence or two; empty where nothing is under way. */
export function hintFor(tool: Tool, { points, canFinish, hasVertex, isTurning }: ToolStatus): string {
  switch (tool) {
    case 'select':
      return isTurning ? turning : hasVertex ? corner : ''
    case 'box':
      return boxHint(points)
    case 'plant':
      return 'Press the map where the plant stands.'
    case 'station':
      return 'Press the map where the nest station is to stand.'
    case 'mud':
      return 'Press the map where the bees find wet mud.'
    case 'row':
      return lineHint('row', points, canFinish)
    case 'tape':
      return tapeHint(points)
    case 'rows':
      return rowsHint(points)
    case 'hole':
      return ringHint('hole', points, canFinish)
    case 'windbreak':
      return lineHint('windbreak', points, canFinish)
    case 'block':
      return ringHint('block', points, canFinish)
    case 'bed':
      return ringHint('bed', points, canFinish)
    case 'forage':
      return ringHint('forage area', points, canFinish)
    case 'keepout':
      return ringHint('ground where no station may stand', points, canFinish)
    case 'boundary':
      return ringHint('orchard', points, canFinish)
    default:
      return tool satisfies never
  }
}

function lineHint(thing: string, points: number, canFinish: boolean): string {
  if (points === 0) return `Press the map where the ${thing} begins.`
  if (!canFinish) return 'Press where it ends, or where it bends.'
  return `${counted(points, 'point')} set. Press the last one again to finish, or go on from it.`
}

function boxHint(points: number): string {
  if (points === 0) return 'Pull a box over what you want, or press its first corner.'
  return 'Press the corner across. Pressed twice on one spot, what lies there is selected.'
}

function tapeHint(points: number): string {
  if (points === 0) return 'Press where to measure from.'
  if (points === 1) return 'Press where to measure to.'
  const round = points > 2 ? ', the first one to measure the ground inside' : ''
  return `Press the last point again to keep the measure${round}, or go on.`
}

function rowsHint(points: number): string {
  if (points === 0) return 'Press the map where the first plant of the first row stands.'
  if (points === 1) return 'Press where the last plant of this row stands, or type it.'
  return 'Press where the last row is to be, or type the number of rows.'
}

function ringHint(thing: string, points: number, canFinish: boolean): string {
  if (points === 0) return `Press the map at the first corner of the ${thing}.`
  if (!canFinish) return `${counted(points, 'corner')} set. Press at the next one, going round.`
  return `${counted(points, 'corner')} set. Press the first one again to finish, or go on round.`
}
