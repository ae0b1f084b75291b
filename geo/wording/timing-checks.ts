import type { Wording } from './wording'

/** Sentences of the field checks of dates: what was found, the figure it is held against and where that comes from, what to do. */
export const timingCheckWording = {
  'released-early': v =>
    `${v.name}: cocoons are set out on ${v.date}, ${v.days} days before any blossom drawn within ${v.reach} m is open (${v.blossom}), over ${v.limit} (${v.source}). ${v.isFar ? 'Most of these bees will have left by then: set' : 'Bees that find no flowers leave: set'} them out later, or draw what blooms there earlier.`,
  'released-late': v =>
    `${v.name}: bees set out on ${v.date} nest from about ${v.nesting} (${v.lag} days later), after the last full bloom near the station (${v.full}). Set them out earlier, or keep them for later crops.`,
  'bloom-unattended': v =>
    `${v.name}${Number(v.others) > 0 ? ` and ${v.others} more of its kind` : ''}: full bloom on ${v.full}, but the first bees near nest about ${v.nesting}, ${v.lag} days after they are set out (${v.source}). Set a batch out earlier; most of this bloom goes by without them.`,
  'one-batch': v =>
    `All cocoons are set out on ${v.date}, but the plantings bloom for ${v.days} days, ${v.from} to ${v.to}, over ${v.limit} (${v.source}). Split them into two batches, so that the last bloom has bees too.`,
  'tail-bare': v =>
    `${v.name}${Number(v.count) > 1 ? `, like ${Number(v.count) - 1} more stations,` : ''} still has a tenth of its bees at work on ${v.to}, ${v.days} days after the last blossom drawn within ${v.reach} m (${v.from}), over ${v.limit} (${v.source}). Flowers that open after the crops give more daughters; draw them if they are there.`,
  'cold-short': v =>
    `${v.bee}: cold since ${v.from}, the cocoons set out on ${v.date} have had ${v.days} days of it, under ${v.limit} (${v.source}). They may come out slowly, or not at all: set them out later.`,
  'cold-long': v =>
    `${v.bee}: cold since ${v.from}, the cocoons set out on ${v.date} have had ${v.days} days of it, over ${v.limit} (${v.source}). Bees use up their reserves: set them out earlier, or keep them at 4 °C or less.`,
  'cold-warm': v =>
    v.days === undefined
      ? `${v.bee}: the cold store of ${v.year} is at ${v.temperature} °C, over ${v.limit} °C (${v.source}). Bees burn their reserves or come out in store: make it colder.`
      : `${v.bee}: kept cold for ${v.days} days by ${v.date} at ${v.temperature} °C. More than ${v.most} days want ${v.limit} °C or less (${v.source}): make it colder, or set them out sooner.`,
  'cold-early': v =>
    `Cold begins on ${v.from}, but brood of the season before, built until about ${v.last}, takes about ${v.days} days to become adult (${v.source}): about ${v.adult}. Larvae put in the cold die. Open a few cocoons to see that they hold bees before you cool them.`,
  'cold-late': v =>
    `Cold begins on ${v.from}. Even slow brood of the season before is adult by about ${v.adult} (${v.most} days); more than ${v.limit} days of warmth after that (${v.source}) cost weight and lives. Where autumn is warm, cool them sooner.`,
  'taken-in-early': v =>
    `${v.name}: nests were taken in on ${v.date}, ${v.days} days after new caps were seen (${v.capped}), under ${v.limit} (${v.source}). Young larvae come loose from their food: carry nests gently, mouths up, and wait longer next time.`,
  'taken-in-flight': v =>
    `${v.name}: nests were taken in on ${v.date}, but by its dates of release bees build there until about ${v.last}. Look whether some were still at work.`,
  'taken-in-late': v =>
    `${v.name}: nests were taken in on ${v.date}, after ${v.by} (${v.source}). By then wasps and summer nesters have found them; look for small round holes when you open them.`,
} as const satisfies Record<string, Wording>
