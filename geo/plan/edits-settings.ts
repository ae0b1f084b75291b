import type { BeeId, OwnCrop, OwnParameters } from '../data/own'
import type { Edit } from './edits'
import { patched } from './edits'
import { memberWords } from './edits-wording'
import type { Plan } from './plan'
import { wholeRows } from './whole-rows'

/** Members of a plan that are set as they stand. */
export type PlanMembers = Pick<Plan, 'name' | 'notes' | 'units' | 'bee' | 'bloomRegion' | 'timeZone'>

const words: Readonly<Record<keyof PlanMembers, string>> = {
  name: 'name',
  notes: 'notes',
  units: 'units',
  bee: 'bee',
  bloomRegion: 'bloom region',
  timeZone: 'time zone',
}

export function setPlanMembers(patch: Partial<PlanMembers>, key?: string): Edit {
  const names = Object.keys(patch) as (keyof PlanMembers)[]
  const isRename = names.length === 1 && names[0] === 'name'
  return {
    label: isRename ? 'Rename plan' : `Change ${memberWords(names.map(name => words[name]))} of the plan`,
    key,
    apply: plan => patched(plan, patch),
  }
}

/** Where map pictures of the plan's ground can be had; null = nowhere. */
export function setTiles(url: string | null): Edit {
  return {
    label: `${url === null ? 'Forget' : 'Keep'} the address of map pictures`,
    apply(plan) {
      if ((plan.tiles?.url ?? null) === url) return plan
      return patched(plan, { tiles: url === null ? undefined : { ...plan.tiles, url } })
    },
  }
}

/** The grower's own value for a parameter of the site or of one bee; null = back to the default. */
export function setOwnParameter(scope: 'site' | BeeId, name: string, value: number | null, key?: string): Edit {
  return {
    label: `${value === null ? 'Reset' : 'Change'} ${spelled(name)}`,
    key,
    apply(plan) {
      const parameters = withOwn(plan.parameters, scope, name, value ?? undefined)
      return parameters === plan.parameters ? plan : { ...plan, parameters }
    },
  }
}

/** A crop of the grower's own, whole; null takes it away (a built-in crop of that id keeps its figures). */
export function setOwnCrop(id: string, crop: OwnCrop | null, key?: string): Edit {
  const nameIn = (plan: Plan): string => crop?.name || (Object.hasOwn(plan.crops, id) && plan.crops[id]!.name) || id
  return {
    label: plan => `${crop === null ? 'Remove own figures of' : 'Change'} crop ${nameIn(plan)}`,
    key,
    apply(plan) {
      const crops = patched(plan.crops, { [id]: crop ?? undefined })
      if (crops === plan.crops) return plan
      const changed = { ...plan, crops }
      // Other spacings may fit a row exactly that was laid out by the old ones.
      return { ...changed, features: wholeRows(changed, plan.features) }
    },
  }
}

function withOwn(own: OwnParameters, scope: 'site' | BeeId, name: string, value: number | undefined): OwnParameters {
  if (scope === 'site') return patched(own, { [name]: value })
  const held = Object.hasOwn(own, scope) ? own[scope] : undefined
  const before = typeof held === 'object' ? held : {}
  const after = patched(before, { [name]: value })
  if (after === before) return own
  return patched(own, { [scope]: Object.keys(after).length > 0 ? after : undefined })
}

/** `typicalForagingRadius` as words: typical foraging radius. */
function spelled(name: string): string {
  return name.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`)
}
