import type { Tool as ToolName } from '../../state/store'
import { drawHole } from './draw-hole'
import { drawLine } from './draw-line'
import { drawPoint } from './draw-point'
import { drawRing } from './draw-ring'
import { drawRows } from './draw-rows'
import { drawTape } from './draw-tape'
import { selectTool } from './select'
import { selectBox } from './select-box'
import type { Answer, Ghost, Tool, ToolContext, ToolEvent, ToolStatus } from './tool'

/** A tool in use, with its state kept inside. */
export type ToolInUse = {
  handle(event: ToolEvent, context: ToolContext): Omit<Answer<unknown>, 'state'>
  ghost(context: ToolContext): Ghost | null
  status(context: ToolContext): ToolStatus
}

export function toolFor(name: ToolName): ToolInUse {
  switch (name) {
    case 'select':
      return inUse(selectTool)
    case 'box':
      return inUse(selectBox)
    case 'hole':
      return inUse(drawHole)
    case 'tape':
      return inUse(drawTape)
    case 'rows':
      return inUse(drawRows)
    case 'row':
    case 'windbreak':
      return inUse(drawLine(name))
    case 'block':
    case 'bed':
    case 'forage':
    case 'keepout':
    case 'boundary':
      return inUse(drawRing(name))
    case 'plant':
    case 'station':
    case 'mud':
      return inUse(drawPoint(name))
    default:
      return name satisfies never
  }
}

function inUse<S>(tool: Tool<S>): ToolInUse {
  let state = tool.start
  return {
    handle(event, context) {
      const { state: next, ...answer } = tool.step(state, event, context)
      state = next
      return answer
    },
    ghost: context => tool.ghost(state, context),
    status: context => tool.status(state, context),
  }
}
