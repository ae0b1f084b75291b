import { adviceFigures } from '../data/timing-figures'
import { valueOn } from '../time/curve'
import { dateOfDay, dayOfSeason } from '../time/day'
import { beeFigure, beeWord, type Context, ladderCaution } from './context'
import type { BloomsNear } from './near-bloom'
import type { Batch, NamedBloom } from './season-facts'
import type { Task } from './task'
import { taskUid } from './uid'
import { counted, dayText, spanText } from './words'

/** A bloom counts as open from a tenth of its flowers on, as its first day is told (BBCH 61). */
const open = 0.1

/**
 * One task for each day on which cocoons are set out. It goes by its first station and that station's batch, not by its
 * date: a batch that is put off stays the same task.
 */
export function releaseTasks(context: Context, batches: readonly Batch[], near: BloomsNear): readonly Task[] {
  const { plan, year } = context
  const days = [...new Set(batches.map(({ day }) => day))].sort((a, b) => a - b)
  return days.map((day): Task => {
    const own = batches.filter(batch => batch.day === day)
    const [head] = own as [Batch, ...Batch[]]
    const stations = [...new Set(own.map(({ name }) => name))]
    const where = stations.length === 1 ? stations[0] : counted(stations.length, 'station')
    const which = days.length === 1 ? '' : `, batch ${days.indexOf(day) + 1} of ${days.length}`
    return {
      uid: taskUid(plan, year, ['release', head.station.id, String(head.number)]),
      kind: 'release',
      date: dateOfDay(day, year),
      title: `Set out cocoons at ${where}${which}`,
      why: whyThen(context, own, near),
      steps: own.map(batch => batchText(batch)),
      cautions: ['species', 'moving', 'sprays', ...ladderCaution(context)],
    }
  })
}

/** "North gate: 60 female and 108 male cocoons, red mason bee, lot A-25." */
function batchText({ name, bee, release: { females, males, lot } }: Batch): string {
  const cocoons =
    males === undefined
      ? `${counted(females, 'female cocoon')}, males not said`
      : `${females} female and ${counted(males, 'male cocoon')}`
  return `${name}: ${cocoons}, ${beeWord(bee)}${lot ? `, lot ${lot}` : ''}.`
}

/** When the females of a batch start to nest, and what is in bloom then. */
function whyThen(context: Context, batches: readonly Batch[], near: BloomsNear): string {
  const { year, settings } = context
  const species = [...new Set(batches.filter(({ release }) => release.females > 0).map(({ bee }) => bee))]
  if (species.length === 0) return 'Male cocoons only: they pair with females set out on other days.'
  const sentences = species.map(bee => {
    const day = Math.round((batches[0]?.day ?? 0) + settings.bees[bee].lag)
    const who = `Females of the ${beeWord(bee)} start to nest about ${dayText(day, year)}, ${spanText(beeFigure(context, bee, 'lag'))} later`
    const stations = batches
      .filter(batch => batch.bee === bee && batch.release.females > 0)
      .map(({ station }) => station)
    const blooms = [...new Set(stations.flatMap(station => near(station)))]
    blooms.sort((a, b) => (a.bloom.first < b.bloom.first ? -1 : 1))
    return `${who}; ${bloomOn(day, blooms, year)}`
  })
  return sentences.join(' ')
}

function bloomOn(day: number, blooms: readonly NamedBloom[], year: number): string {
  if (blooms.length === 0) return `no blossom with known dates is drawn within ${adviceFigures.forageReach.value} m.`
  const now = blooms.filter(({ curve }) => valueOn(curve, day) >= open)
  if (now.length > 0) {
    const until = now.map(({ name, bloom }) => `${name} (to ${dayText(dayOfSeason(bloom.end, year), year)})`)
    return `open near then: ${until.join('; ')}.`
  }
  const next = blooms.find(({ bloom }) => dayOfSeason(bloom.first, year) > day)
  return next === undefined
    ? 'by then all blooms near are over.'
    : `nothing drawn near is open then; ${next.name} comes next, on ${dayText(dayOfSeason(next.bloom.first, year), year)}.`
}
