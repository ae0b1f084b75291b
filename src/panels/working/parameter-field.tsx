import { crops } from '#geo/data/crops'
import { type BeeId, beeIds, type OwnCrop } from '#geo/data/own'
import type { ParameterRow } from '#geo/data/parameter-rows'
import { sources } from '#geo/data/sources'
import type { Edit } from '#geo/plan/edits'
import { setOwnCrop, setOwnParameter } from '#geo/plan/edits-settings'
import type { Plan } from '#geo/plan/plan'
import { NumberField } from '../../parts/number-field'
import { quantityOf } from '../../text/units'
import { useEdit, usePlan } from '../hooks'
import { fieldLimit } from '../selected/feature-fields'
import { limitOf, parameterLabel, valueText } from './parameter-labels'

const bases = { measured: 'measured', derived: 'worked out', assumed: 'assumed', own: 'your own' } as const

/** One figure in use: its value to be changed, the default with its range, how it is known and where it comes from. */
export function ParameterField({ row }: { readonly row: ParameterRow }) {
  const plan = usePlan()
  const edit = useEdit()
  const limit = limitOf(row.groupId, row.name)
  const text = (value: number) => valueText(value, row.unit, plan.units)
  const label = parameterLabel(row)
  const range = row.low === row.high ? '' : `, ${text(row.low)} to ${text(row.high)}`
  return (
    <div className="parameter">
      {limit === undefined ? (
        <p>
          <span className="field-label">{label}</span>
          <br />
          {text(row.value)}
        </p>
      ) : (
        <NumberField
          label={label}
          quantity={quantityOf(row.unit)}
          value={row.own ? row.value : null}
          limit={fieldLimit(limit)}
          {...(row.table === null ? { isRequired: true } : { fallback: row.table })}
          onCommit={value => edit(ownValue(plan, row, value))}
          note={row.table === null ? 'Your own; the tables have none.' : `Default ${text(row.table)}${range}`}
        />
      )}
      {row.own && row.table !== null ? (
        <button type="button" className="link" onClick={() => edit(ownValue(plan, row, null))}>
          Use the default again
        </button>
      ) : null}
      <details className="sources">
        <summary>
          {row.own ? 'Your own value; source of the default' : `${capitalisedBasis(row)}; source`}
          <span className="unseen"> of {label}</span>
        </summary>
        <p>{row.about}</p>
        <ul>
          {row.sources.map(key => {
            const { authors, year, title, where, seen } = sources[key]
            return (
              <li key={key}>
                {authors}
                {year === null ? '' : ` ${year}`}: {title}. {where}.{' '}
                {seen === 'read' ? '' : seen === 'excerpt' ? '(Seen in excerpts.)' : '(From memory.)'}
              </li>
            )
          })}
        </ul>
      </details>
    </div>
  )
}

function capitalisedBasis({ basis }: ParameterRow): string {
  const words = bases[basis]
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** The edit that puts a grower's own value in place of the default, or (null) the default back. */
function ownValue(plan: Plan, { groupId, name }: Pick<ParameterRow, 'groupId' | 'name'>, value: number | null): Edit {
  if (groupId === 'site' || (beeIds as readonly string[]).includes(groupId)) {
    return setOwnParameter(groupId as 'site' | BeeId, name, value)
  }
  const before: OwnCrop = Object.hasOwn(plan.crops, groupId) ? plan.crops[groupId]! : {}
  const { [name as keyof OwnCrop]: _, ...without } = before
  const after: OwnCrop = value === null ? without : { ...before, [name]: value }
  const isEmpty = Object.keys(after).length === 0 && Object.hasOwn(crops, groupId)
  return setOwnCrop(groupId, isEmpty ? null : after)
}
