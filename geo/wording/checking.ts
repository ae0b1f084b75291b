import type { Wording } from './wording'

/** Sentences for plans that can be read but do not make sense as they stand; the plan keeps what the file has. */
const ground = {
  'id-repeated': v =>
    `The id ${v.id} is used ${v.count} times, so it is not clear which one is meant. All are kept; give each an id of its own, or remove the copies.`,
  'position-off-earth': v =>
    `${v.name} has a position at ${v.lng}, ${v.lat}, which is not a longitude and latitude in degrees. ${
      v.isSwapped
        ? 'The two figures may be swapped: longitude comes first.'
        : 'The file may be in another coordinate system; save it as WGS84.'
    } It is kept, but nothing can be counted until it is put right or removed.`,
  'lon-lat-swapped': v =>
    `${v.name} lies ${v.kilometres} km from the rest, at ${v.lng}, ${v.lat}; with the two figures swapped it would lie beside it. Longitude comes first. It is kept as it is; swap the figures or draw it anew.`,
  'plan-wide': v =>
    `The plan is ${v.kilometres} km wide. Distances are exact up to ${v.limit} km; beyond that they are a little off. Make a plan of its own for what lies far apart.`,
  'plan-too-wide': v =>
    `The plan is ${v.kilometres} km wide; nothing can be counted beyond ${v.limit} km. Find what lies far from the rest and remove it, or give it a plan of its own.`,
  'other-coordinates': v =>
    `The file says that its positions are in ${v.system}, not in longitude and latitude (WGS84). They are kept, but cannot be trusted; save the file again as WGS84.`,
  'no-positions': v => `${v.name} holds no plants: its list of positions is empty. Add plants to it or remove it.`,
  'line-short': v =>
    `${v.name} is a line of ${v.count === 1 ? 'one position' : 'no positions'}; a line needs two. Draw it anew or remove it.`,
  'line-flat': v => `${v.name} is a line without length: all its positions are the same. Draw it anew or remove it.`,
  'ring-short': v => `${outline(v)} has fewer than three different corners, so it bounds no area. Draw it anew.`,
  'ring-open': v =>
    `${outline(v)} is not closed: its last position should be its first. It is kept as it is; draw it anew, or close it in the file.`,
  'ring-long': v =>
    `${v.name} has more than ${v.limit} corners, too many to look through. It is kept as it is; draw it with fewer.`,
  'ring-crossing': v =>
    `${outline(v)} crosses or touches itself, so it is not clear what lies inside. It is kept as drawn; move its corners apart.`,
  'ring-flat': v => `${outline(v)} encloses no area. Draw it anew or remove it.`,
  'hole-outside': v =>
    `${v.name} has a hole (number ${v.ring}) that is not wholly within its outline. Move the hole inside or remove it.`,
  'holes-overlap': v =>
    `${v.name} has a hole (number ${v.ring}) that covers the same ground as another. Move them apart or remove one.`,
} as const satisfies Record<string, Wording>

function outline(v: Parameters<Wording>[0]): string {
  return v.ring === 0 ? `The outline of ${v.name}` : `Hole number ${v.ring} of ${v.name}`
}

const figures = {
  'out-of-range': v =>
    `${v.name}: the ${v.label} is ${v.found}; it should be ${v.allowed}. It is kept as it is; correct it (${v.path} in the file).`,
  'not-whole': v =>
    `${v.name}: the ${v.label} is ${v.found}; it should be a whole number. It is kept as it is; correct it (${v.path} in the file).`,
  'never-planted': v =>
    `${v.name} is removed in ${v.removed}, not after it is planted in ${v.planted}, so it never stands in the ground. Correct one of the two years.`,
  'too-many-plants': v =>
    `The plan breaks into about ${v.plants} plants and cells; at most ${v.limit} can be counted. ${v.name} alone has ${v.most}: check its size and its spacing.`,
  'parameter-unknown': v =>
    `${v.path}: there is no figure “${v.parameter}” at this place, so it is kept but not used. ${
      v.isOfBee ? 'It belongs to a bee: move it under the name of a species.' : 'Check its spelling.'
    }`,
  'parameter-misplaced': v =>
    v.isBee
      ? `The own values of ${v.parameter} should be a group of figures, but are a single number, which is kept but cannot be used. Correct it in the file.`
      : `The own value of ${v.parameter} should be a number, but is a group, which is kept but cannot be used. Correct it in the file.`,
  'parameters-crossed': v =>
    `${v.name}: the ${v.lowLabel} (${v.low}) should be below the ${v.highLabel} (${v.high}). Both are kept; correct one of them.`,
  'time-zone-unknown': v =>
    `The time zone “${v.zone}” is not known here. It is kept; choose one such as Europe/London in the settings of the plan.`,
} as const satisfies Record<string, Wording>

const crops = {
  'crop-unknown': v =>
    `${v.name} is planted with “${v.crop}”, a crop that is neither built in nor one of the plan's own. Choose another crop, or add it to the plan's crops.`,
  'crop-incomplete': v =>
    `The crop ${v.name} lacks figures: ${v.missing}. Plantings of it cannot be counted; fill them in, or base it on a built-in crop.`,
  'crop-base-unknown': v =>
    `The crop ${v.name} is based on “${v.base}”, which is no crop here. ${cropKept(v)} Base it on another crop.`,
  'crop-loop': v =>
    `The crop ${v.name} is based on a circle of crops through “${v.base}”. ${cropKept(v)} Base one of them on a built-in crop.`,
  'bee-unknown': v => `${v.name} names a bee without figures: “${v.bee}”. Choose one of ${v.known}.`,
} as const satisfies Record<string, Wording>

function cropKept(v: Parameters<Wording>[0]): string {
  return v.isComplete
    ? 'Its figures are complete all the same.'
    : 'It lacks figures, so plantings of it cannot be counted.'
}

const seasons = {
  'season-repeated': v => `The season ${v.year} is there more than once. All are kept; only the first is used.`,
  'date-impossible': v =>
    `${v.name}: the date of ${v.label} is ${v.found}, which is no day of the calendar (written YYYY-MM-DD). It is kept as it is; correct it (${v.path} in the file).`,
  'date-far': v =>
    `${v.name}: the date of ${v.label}, ${v.date}, lies far outside the season ${v.year}. It is kept as it is; check the year.`,
  'bloom-order': v =>
    `The bloom of ${v.name} in ${v.year} is out of order: first ${v.first}, full ${v.full}, end ${v.end}. Each must come after the one before; correct the dates.`,
  'bloom-long': v =>
    `The bloom of ${v.name} in ${v.year} lasts ${v.days} days, from ${v.first} to ${v.end}; more than ${v.limit} is not usual${v.source === undefined ? '' : ` (${v.source})`}. The dates are kept; check the months.`,
  'stage-unknown': v =>
    `The bloom of ${v.name} lists “${v.stage}” among the stages seen; the stages are first, full and end. It is kept, but means nothing here; correct it (${v.path} in the file).`,
  'bloom-unused': v =>
    `The season ${v.year} has bloom dates for “${v.key}”, which is neither a crop nor anything drawn that blooms. They are kept, but not used.`,
  'station-unknown': v =>
    `The season ${v.year} lists a station “${v.id}” ${v.isDrawn ? 'that is drawn as something else' : 'that is not drawn'}. It is kept, but its bees are not counted; draw it, or take it out of the season.`,
  'record-unused': v =>
    `The season ${v.year} has records of “${v.id}”, which is not drawn. They are kept (${v.path} in the file), but not shown.`,
  'fruit-set-high': v =>
    `${v.name}: ${v.fruit} fruit from ${v.flowers} flowers in ${v.year}. Both are kept; check the two counts.`,
} as const satisfies Record<string, Wording>

const records = {
  'capped-over-tubes': v =>
    `${v.name}: ${v.capped} capped tubes in ${v.year}, but the station has ${v.tubes}. The count is kept, but nothing is worked out from it until one of the two is put right (${v.path} in the file).`,
  'capped-falls': v =>
    `${v.name}: ${v.capped} capped tubes in ${v.year} after ${v.before} before. Caps do not open again in the season: correct one of the two, or note the damage. Until then nothing is worked out from the station's capped tubes (${v.path} in the file).`,
  'opened-over-tubes': v =>
    `${v.name}: ${v.opened} tubes opened in ${v.year}, but the station has ${v.tubes}. The opening is kept, but nothing is worked out from it until one of the two is put right (${v.path} in the file).`,
  'cells-overfull': v =>
    `${v.name}: cocoons and losses of ${v.tube === null ? `the opening in ${v.year}` : `tube ${v.tube} opened in ${v.year}`} come to ${v.found}, more than its ${v.cells} cells. The opening is kept, but nothing is worked out from it until the counts are put right (${v.path} in the file).`,
  'cells-missing': v =>
    `${v.name}: cocoons and losses come to ${v.found} of the ${v.cells} cells opened in ${v.year}; the rest is not accounted for. All counts are kept and used.`,
  'tubes-listed': v =>
    `${v.name}: ${v.listed} tubes are listed one by one for ${v.year}, more than the ${v.opened} opened. Both are kept; correct one of them.`,
  'female-share-odd': v =>
    `${v.name}: ${v.share}% of the cocoons${v.year === null ? '' : ` of ${v.year}`} are females, ${v.isLow ? `under ${v.limit}%` : `over ${v.limit}%`}. That is seldom found: ${v.isLow ? 'look at bore and depth of the tubes' : 'look whether males had already left'}, and how the sexes were told apart. The counts are kept and used.`,
  'lot-repeated': v => `${v.name} is there more than once. All are kept; give each a name of its own.`,
  'lot-station-unknown': v => `${v.name} is said to come from a station “${v.station}” that is not drawn. It is kept.`,
  'lot-overdrawn': v =>
    `${v.name}: ${v.out} cocoons are set out from it, but it holds ${v.count}. Both are kept; correct one of them.`,
} as const satisfies Record<string, Wording>

const weather = {
  'weather-date': v =>
    `The weather of ${v.year} has ${days(v)} whose date is no day of the calendar, the first ${v.found} (${v.path} in the file). Correct or remove them.`,
  'weather-repeated': v =>
    `The weather of ${v.year} has ${days(v)} given more than once, the first ${v.date}. All are kept; remove the copies.`,
  'weather-out-of-range': v =>
    `The weather of ${v.year}: the ${v.label} on ${v.date} is ${v.found}; it should be ${v.allowed}. ${days(v)} in all. They are kept; correct or remove them (${v.path} in the file).`,
  'weather-order': v =>
    `The weather of ${v.year} has ${days(v)} with the lowest temperature above the highest, the first ${v.date} (${v.low} and ${v.high} °C). They are kept; check whether the two are swapped.`,
} as const satisfies Record<string, Wording>

function days(v: Parameters<Wording>[0]): string {
  return v.count === 1 ? '1 day' : `${v.count} days`
}

export const checkingWording = { ...ground, ...figures, ...crops, ...seasons, ...records, ...weather }
