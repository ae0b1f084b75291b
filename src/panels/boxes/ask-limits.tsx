import { defaultSpacing } from '#geo/siting/candidates'
import type { Role } from '#geo/siting/question'
import { assumedPrices, mostTubes } from '#geo/stocking/stock'
import { ChoiceField } from '../../parts/choice-field'
import { DateField } from '../../parts/date-field'
import { NumberField } from '../../parts/number-field'
import { type Ask, canMove, dateIn } from '../../state/boxes'
import { plantingsIn, stationsInUse } from '../../state/selectors'
import { BeeChoice } from '../first/bee-choice'
import { usePlan, useYear } from '../hooks'
import { titleOf } from '../titles'
import { priceNames, roleName } from './ask-words'
import { useAsk } from './use-boxes'

const roles = ['keep', 'move', 'drop'] as const

/** What becomes of each station that is in use. */
export function RoleFields() {
  const plan = usePlan()
  const year = useYear()
  const [ask, change] = useAsk()
  const standing = stationsInUse(plan, year)
  if (standing.length === 0) return <p className="aside-note">No station is in use in {year}.</p>
  const isMovable = canMove(ask.kind)
  const roleOf = (id: string): Role => {
    const role = ask.roles[id] ?? 'keep'
    return role === 'move' && !isMovable ? 'keep' : role
  }
  const all = (role: Role) => change({ roles: Object.fromEntries(standing.map(({ id }) => [id, role])) })
  return (
    <>
      {standing.map(station => (
        <ChoiceField
          key={station.id}
          label={titleOf(station)}
          value={roleOf(station.id)}
          choices={roles
            .filter(value => isMovable || value !== 'move')
            .map(value => ({ value, name: roleName(value, ask.kind) }))}
          onCommit={role => change({ roles: { ...ask.roles, [station.id]: role } })}
        />
      ))}
      {standing.length < 2 || !isMovable ? null : (
        <div className="actions">
          <button type="button" className="quiet" onClick={() => all('keep')}>
            All stay
          </button>
          <button type="button" className="quiet" onClick={() => all('move')}>
            All may move
          </button>
        </div>
      )}
      <p className="field-note">
        Never move a station once bees nest there: females that cannot find their nest are lost.
      </p>
    </>
  )
}

const datesChoices: readonly { readonly value: Ask['dates']; readonly name: string }[] = [
  { value: 'season', name: 'the dates of the season' },
  { value: 'advice', name: 'the dates advised' },
]

/** Which bee new stations hold, and when it is set out. */
export function BeeFields() {
  const plan = usePlan()
  const year = useYear()
  const [ask, change] = useAsk()
  return (
    <>
      <BeeChoice
        label="Bee of new stations"
        isCautioned
        value={ask.bee ?? plan.bee}
        onCommit={bee => change({ bee: bee === plan.bee ? null : bee })}
      />
      <ChoiceField
        label="Set out on"
        value={ask.dates}
        choices={datesChoices}
        onCommit={dates => change({ dates })}
        note={
          ask.dates === 'advice'
            ? 'The dates that the release advice under Bloom and flight has for the nearest station with this bee, in up to three batches'
            : 'The dates of the nearest station with this bee; without any, the one day that meets the blooms best'
        }
      />
      <DateField
        label="Or all on one day"
        value={dateIn(ask, year)}
        year={year}
        onCommit={date => change({ date })}
        note={dateIn(ask, year) === null ? 'Empty: on the dates above' : undefined}
      />
      <p className="field-note">Bees that fly before or after a bloom do nothing for it.</p>
    </>
  )
}

export function PriceFields() {
  const [ask, change] = useAsk()
  return (
    <>
      <p className="field-note">
        In your own currency. Prices left empty are assumed: a place to start, not a quotation.
      </p>
      <div className="fields">
        {priceNames.map(({ name, label }) => (
          <NumberField
            key={name}
            label={label}
            value={ask.prices[name] ?? null}
            fallback={assumedPrices[name]}
            note={ask.prices[name] === undefined ? `${assumedPrices[name]} assumed` : 'Your own'}
            limit={{ low: 0, high: 1e6 }}
            onCommit={value => {
              const { [name]: _, ...others } = ask.prices
              change({ prices: value === null ? others : { ...others, [name]: value } })
            }}
          />
        ))}
      </div>
    </>
  )
}

/** In what sizes cocoons are sold, and how many tubes a station takes. */
export function StockFields() {
  const [ask, change] = useAsk()
  return (
    <>
      <div className="fields">
        <NumberField
          label="Cocoons come in sets of"
          value={ask.setOf}
          isRequired
          limit={{ low: 1, high: 10_000, isWhole: true }}
          onCommit={setOf => setOf !== null && change({ setOf })}
          note="Female cocoons, rounded up to whole sets"
        />
        <NumberField
          label="Most tubes at a station"
          value={ask.tubes}
          limit={{ low: 1, high: 1_000_000, isWhole: true }}
          onCommit={tubes => change({ tubes })}
          note={ask.tubes === null ? `No limit set; ${mostTubes} is plenty` : undefined}
        />
      </div>
      {ask.kind === 'stock' ? (
        <label className="option">
          <input type="checkbox" checked={ask.isFree} onChange={event => change({ isFree: event.target.checked })} />
          Buy tubes as needed: those that hang there set no limit
        </label>
      ) : null}
    </>
  )
}

export function LimitFields() {
  const plan = usePlan()
  const [ask, change] = useAsk()
  const hasMud = plan.features.some(({ properties }) => properties.kind === 'mud')
  const hasShelter = plan.features.some(({ properties }) => properties.kind === 'windbreak')
  const own = plan.features.filter(({ properties }) => properties.kind === 'candidate').length
  return (
    <>
      <p className="field-note">
        {own > 0
          ? `The plan has ${own} places of your own for stations: only these are looked at.`
          : 'Looked at: row ends, hedges and fences, gaps between plants in a row, open ground inside the boundary. Never no-station ground.'}
      </p>
      <div className="fields">
        <NumberField
          label="At least so far apart"
          quantity="length"
          value={ask.spacing}
          fallback={defaultSpacing}
          limit={{ low: 0, high: 500 }}
          onCommit={spacing => change({ spacing })}
        />
        <NumberField
          label="Mud no farther than"
          quantity="length"
          value={ask.mudWithin}
          limit={{ low: 1, high: 1000 }}
          note={hasMud ? 'Empty: anywhere' : 'No mud is drawn on this plan'}
          onCommit={mudWithin => change({ mudWithin })}
        />
      </div>
      <label className="option">
        <input
          type="checkbox"
          checked={ask.isSheltered}
          onChange={event => change({ isSheltered: event.target.checked })}
        />
        Only beside a hedge or other shelter{hasShelter ? '' : ' (none is drawn)'}
      </label>
      <label className="option">
        <input
          type="checkbox"
          checked={ask.withLanes}
          onChange={event => change({ withLanes: event.target.checked })}
        />
        Also in alleys that tractors use
      </label>
    </>
  )
}

/** How much a female at each planting counts. */
export function WeightFields() {
  const plan = usePlan()
  const year = useYear()
  const [ask, change] = useAsk()
  return (
    <>
      <p className="field-note">
        A planting with weight 2 counts twice for each female that serves it, one with 0 not at all.
      </p>
      <div className="fields">
        {plantingsIn(plan, year).map(planting => (
          <NumberField
            key={planting.id}
            label={titleOf(planting)}
            value={ask.weights[planting.id] ?? null}
            fallback={1}
            limit={{ low: 0, high: 100 }}
            onCommit={value => {
              const { [planting.id]: _, ...others } = ask.weights
              change({ weights: value === null ? others : { ...others, [planting.id]: value } })
            }}
          />
        ))}
      </div>
    </>
  )
}
