import type { ImportGroup } from '#geo/file/import'
import { type ImportChoice, type ImportChoices, needsCrop } from '#geo/file/import-things'
import type { ShownGroup } from '#geo/file/open-import'

/** What somebody chose while looking through a file, whatever is read anew from it meanwhile. */
export type KeptChoices = {
  /** By key of group, and only what was chosen by hand; also for groups that are gone and may come back. */
  readonly touched: ImportChoices
  /** Names of cultivars by the spelling they were gathered under. */
  readonly cultivars: Readonly<Record<string, string>>
}

export const nothingKept: KeptChoices = { touched: {}, cultivars: {} }

type Group = ImportGroup & Pick<ShownGroup, 'lines' | 'rowFit'>

/**
 * The choice for each group there is now: the one made for it, else the one made for a group of its shape that is gone
 * (a column was matched anew, and the same trees go by other words), else what the file suggests.
 */
export function choicesNow(groups: readonly Group[], { touched }: KeptChoices): ImportChoices {
  const keys = new Set(groups.map(({ key }) => key))
  const gone = Object.entries(touched).filter(([key]) => !keys.has(key))
  return Object.fromEntries(
    groups.map(group => {
      if (Object.hasOwn(touched, group.key)) return [group.key, fitting(group, touched[group.key]!)]
      const like = gone.filter(([key]) => shapeIn(key) === group.shape).map(([, choice]) => choice)
      const isOne = like.length > 0 && like.every(each => JSON.stringify(each) === JSON.stringify(like[0]))
      if (!isOne) return [group.key, suggested(group)]
      const [choice] = like
      // The table's own words for a crop go before one that was chosen for want of them.
      return [group.key, fitting(group, choice && cropOf(group) ? { ...choice, crop: cropOf(group) } : choice!)]
    }),
  )
}

/** The crop to begin with: what the words mean, else what they likely do; empty where that is open. */
export function cropOf({ crop, likely }: Pick<ImportGroup, 'crop' | 'likely'>): string {
  return crop ?? likely?.crop ?? ''
}

function suggested(group: Group): ImportChoice {
  const { kind, lines, rowFit } = group
  // A device's wandering while its owner stands still is nobody's wish.
  const walked = lines === 'walked' ? { walked: 'cleaned' as const } : {}
  // Rows know what ground each tree stands for; where all trees stand in them, nothing is lost.
  const inRows = kind === 'plant' && rowFit !== null && rowFit.others === 0 ? { inRows: true as const } : {}
  return { kind, ...(needsCrop(kind) ? { crop: cropOf(group) } : {}), ...walked, ...inRows }
}

/** The choice where the group allows its kind. */
function fitting(group: Group, choice: ImportChoice | null): ImportChoice | null {
  if (choice === null) return null
  if (!group.kinds.includes(choice.kind)) return suggested(group)
  return needsCrop(choice.kind) && !choice.crop ? { ...choice, crop: cropOf(group) } : choice
}

function shapeIn(key: string): string {
  return (JSON.parse(key) as readonly string[])[1] ?? ''
}

export function lacksCrop(choice: ImportChoice | null): boolean {
  return choice !== null && needsCrop(choice.kind) && !choice.crop
}
