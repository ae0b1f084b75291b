import { releaseLimits } from '#geo/plan/limits'
import type { Release } from '#geo/plan/plan'
import { wholeUp } from '#geo/stocking/cocoons'
import { DateField } from '../../parts/date-field'
import { NumberField } from '../../parts/number-field'
import { TextField } from '../../parts/text-field'
import { fieldLimit } from '../selected/feature-fields'

type Props = {
  readonly number: number
  readonly release: Release
  readonly year: number
  readonly malesPerFemale: number
  /** null takes the batch away. */
  readonly onCommit: (release: Release | null) => void
}

/** One batch of cocoons: when, how many, which lot. */
export function ReleaseFields({ number, release, year, malesPerFemale, onCommit }: Props) {
  const { males: _, ...withoutMales } = release
  const { lot: __, ...withoutLot } = release
  return (
    <fieldset className="release">
      <legend>Batch {number}</legend>
      <div className="fields">
        <DateField
          label="Set out on"
          value={release.date}
          year={year}
          onCommit={date => date !== null && onCommit({ ...release, date })}
        />
        <NumberField
          label="Female cocoons"
          value={release.females}
          limit={fieldLimit(releaseLimits.females)}
          isRequired
          onCommit={females => females !== null && onCommit({ ...release, females })}
        />
        <NumberField
          label="Male cocoons"
          value={release.males ?? null}
          limit={fieldLimit(releaseLimits.males)}
          fallback={wholeUp(release.females * malesPerFemale)}
          onCommit={males => onCommit(males === null ? withoutMales : { ...release, males })}
        />
        <TextField
          label="Lot"
          value={release.lot ?? ''}
          placeholder="origin, year"
          onCommit={lot => onCommit(lot === '' ? withoutLot : { ...release, lot })}
        />
      </div>
      <button type="button" className="quiet" onClick={() => onCommit(null)}>
        Remove batch {number}
      </button>
    </fieldset>
  )
}
