import { dateText } from '#geo/time/date-text'
import { dateOfDay } from '#geo/time/day'
import { Table } from '../../parts/table'
import { aboutCounted } from '../../text/words'
import { daysOf, type SeasonBands } from '../season-bands'

type Line = {
  readonly id: string
  readonly what: string
  readonly from: string
  readonly most: string
  readonly to: string
}

/** The picture's bands by their dates. */
export function BandTable({ bands, year }: { readonly bands: SeasonBands; readonly year: number }) {
  const blooms = bands.blooms.map(
    ({ id, label, bloom }): Line => ({
      id,
      what: `${label}, bloom`,
      from: dateText(bloom.first),
      most: dateText(bloom.full),
      to: dateText(bloom.end),
    }),
  )
  const flights = bands.flights.map((band): Line => {
    const { first, peak, last } = daysOf(band)
    const date = (day: number) => dateText(dateOfDay(day, year))
    return {
      id: band.id,
      what: `${band.label}, flight`,
      from: date(first),
      most: `${date(peak)}, ${aboutCounted(band.females, 'female')}`,
      to: date(last),
    }
  })
  return (
    <Table
      caption={`Bloom and flight in ${year}, by date`}
      columns={[
        { key: 'what', head: 'What', cell: line => line.what },
        { key: 'from', head: 'First', cell: line => line.from },
        { key: 'most', head: 'Most', cell: line => line.most },
        { key: 'to', head: 'Last', cell: line => line.to },
      ]}
      rows={[...blooms, ...flights]}
      keyOf={line => line.what + line.id}
    />
  )
}
