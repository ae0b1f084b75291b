import { nestingShare } from '../stocking/season-ground'
import { cocoonsInSets, usualFemales } from '../stocking/stock'
import type { Setting } from './setting'

/** Whole female cocoons of each placing: of a new station those asked for, of one that moves what it has. */
export function cocoonsOfPlacings({ ground, placings, options }: Setting, fresh: number | undefined): number[] {
  const { settings, supplies } = ground
  const { setOf = 1 } = options
  return placings.map(({ moves, kind }) => {
    const bee = settings.bees[kind.bee]
    if (moves === null) return fresh ?? cocoonsInSets(usualFemales, bee, setOf)
    const { season } = supplies.find(({ id }) => id === moves)!
    return (season.releases ?? []).reduce((sum, { females }) => sum + females, 0)
  })
}

/** Nesting females of each station that moves, in the order of the placings. */
export function femalesOfMovers(setting: Setting): number[] {
  const { settings } = setting.ground
  return cocoonsOfPlacings(setting, 0)
    .map((cocoons, p) => cocoons * nestingShare(settings.bees[setting.placings[p]!.kind.bee]))
    .slice(1)
}
