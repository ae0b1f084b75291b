import type { Wording } from './wording'

/** Sentences of the field checks: what was found, the figure it is held against and where that comes from, what to do. */
export const fieldCheckWording = {
  'station-in-keepout': v =>
    `${v.name} stands in ${v.area}, an area marked as having no stations. It is counted all the same; move the station, or redraw the area.`,
  'station-high': v =>
    `${v.name} is ${v.height} m up, over ${v.limit} m (${v.source}): most people need a ladder for that. Set it where it can be reached from the ground.`,
  'station-low': v =>
    `${v.name} is ${v.height} m up, under ${v.limit} m (${v.source}): rain splashes and tall grass reach it. Raise it if you can.`,
  'facing-unsuited': v =>
    `${v.name} faces ${v.facing} degrees${v.isNearly ? ', where the sun comes late in the morning' : ', away from the morning sun'}; ${v.low} to ${v.high} degrees suits best (${v.source}). Turn it ${v.isNearly ? 'a little towards the east' : 'that way'} before bees are out.`,
  'roof-short': v =>
    `${v.name}: the roof reaches ${v.overhang} mm beyond the tubes, under ${v.limit} mm (${v.source}), so rain drives in. Give it a longer one.`,
  'station-sways': v =>
    `${v.name} hangs on a branch and sways; a station should not move (${v.source}). Fix it to a post or a wall.`,
  'mud-far': v =>
    `${v.name}: the nearest mud drawn is ${v.metres} m away, over ${v.limit} m (${v.source}). ${v.isFar ? 'Bees cannot close their nests without it: keep' : 'Bees save flights with'} a wet patch of clayey soil nearer by.`,
  'no-mud': () =>
    `No mud is drawn, so it is not known whether the bees have any in reach of their stations. Without it they cannot close their nests; draw where there is wet, clayey soil.`,
  'bore-unsuited': v =>
    `${v.name}: the tubes of ${v.year} have a bore of ${v.bore} mm; ${v.low} to ${v.high} mm suits the ${v.bee} (${v.source}). Use tubes of that bore.`,
  'tubes-short': v =>
    `${v.name}: the tubes of ${v.year} are ${v.depth} mm deep; the ${v.bee} wants at least ${v.limit} mm (${v.source}). Use deeper tubes, or there will be fewer daughters.`,
  'tubes-few': v =>
    `${v.name}: ${v.tubes} tubes in ${v.year} for about ${v.females} nesting females, which want ${v.wanted} at ${v.perFemale} each (${v.source}). Add tubes, or release fewer.`,
  'station-not-there': v =>
    `${v.name} is used in ${v.year}, but stands there only ${v.isEarly ? 'from' : 'until'} ${v.limit}. It is counted all the same; correct the year, or take it out of the season.`,
} as const satisfies Record<string, Wording>
