import type { Plan } from '#geo/plan/plan'
import type { LngLat } from '#geo/space/plane'
import { planeOf } from '#geo/space/plane'
import type { Answer, Pixel, PointerKind, Tool, ToolContext, ToolEvent } from '../../../../src/map/tools/tool'
import { smallPlan, step } from '../../../support/builders'

/** A screen on which a step of the builders' plans (a ten-thousandth of a degree) is 20 pixels; north is up. */
export function toPixel([lng, lat]: LngLat): Pixel {
  return { x: (lng + 1.7) * 200_000 + 100, y: 500 - (lat - 52.2) * 200_000 }
}

export function contextOf(patch: Partial<ToolContext> = {}): ToolContext {
  const plan: Plan = patch.plan ?? smallPlan()
  let count = 0
  return {
    plan,
    year: 2026,
    selection: [],
    plane: planeOf(plan.features),
    toPixel,
    spacingOf: crop => (crop === 'apple' ? { spacing: 2.5, rowSpacing: 4 } : null),
    newId: kind => {
      count += 1
      return `${kind}-new-${count}`
    },
    ...patch,
  }
}

type Steps = readonly [east: number, north: number]
type Manner = { readonly pointer?: PointerKind; readonly shift?: boolean; readonly alt?: boolean }

function pointed<T extends string>(type: T, steps: Steps, { pointer = 'mouse', shift = false, alt = false }: Manner) {
  const at = step(steps)
  return { type, at, pixel: toPixel(at), keys: { shift, alt }, pointer }
}

export const press = (steps: Steps, manner: Manner = {}): ToolEvent => pointed('press', steps, manner)
export const drag = (steps: Steps, manner: Manner = {}): ToolEvent => pointed('drag', steps, manner)
export const release = (steps: Steps, manner: Manner = {}): ToolEvent => pointed('release', steps, manner)
export const hover = (steps: Steps, manner: Manner = {}): ToolEvent => pointed('hover', steps, manner)
export const tap = (steps: Steps, { count = 1, ...manner }: Manner & { readonly count?: 1 | 2 } = {}): ToolEvent => ({
  ...pointed('tap', steps, manner),
  count,
})

/** All that came of events in their order; the plan is changed by each edit, the selection by each choice. */
export function play<S>(tool: Tool<S>, events: readonly ToolEvent[], patch: Partial<ToolContext> = {}) {
  let state = tool.start
  let context = contextOf(patch)
  const answers: Answer<S>[] = []
  for (const event of events) {
    const answer = tool.step(state, event, context)
    answers.push(answer)
    state = answer.state
    const plan = answer.edit ? answer.edit.apply(context.plan) : context.plan
    context = { ...context, plan, plane: planeOf(plan.features), selection: answer.selection ?? context.selection }
  }
  return {
    plan: context.plan,
    selection: context.selection,
    answers,
    last: answers.at(-1),
    edits: answers.flatMap(({ edit }) => (edit ? [edit] : [])),
    notices: answers.flatMap(({ notice }) => (notice ? [notice] : [])),
    ghost: tool.ghost(state, context),
    status: tool.status(state, context),
  }
}
