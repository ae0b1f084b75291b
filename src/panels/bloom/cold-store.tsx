import { setColdStore } from '#geo/plan/edits-timing'
import { coldStoreLimits } from '#geo/plan/limits'
import { DateField } from '../../parts/date-field'
import { NumberField } from '../../parts/number-field'
import { useEdit, useSeason, useYear } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'

/** Since when the season's cocoons have been cold, and how cold: what emergence and some checks hang on. */
export function ColdStoreFields() {
  const year = useYear()
  const season = useSeason()
  const edit = useEdit()
  const cold = season?.coldStore ?? null
  return (
    <section className="stack" aria-labelledby="cold">
      <h3 id="cold">Cocoons in the cold</h3>
      <div className="fields">
        <DateField
          label="Cold since"
          value={cold?.from ?? null}
          year={year}
          onCommit={from => edit(setColdStore(year, from === null ? null : { ...cold, from }))}
          note={cold === null ? `The day in ${year - 1} on which the cocoons went into the cold.` : undefined}
        />
        {cold === null ? null : (
          <NumberField
            label="Temperature there"
            quantity="temperature"
            value={cold.temperature ?? null}
            limit={fieldLimit(coldStoreLimits.temperature)}
            onCommit={temperature =>
              edit(setColdStore(year, { from: cold.from, ...(temperature === null ? {} : { temperature }) }))
            }
          />
        )}
      </div>
    </section>
  )
}
