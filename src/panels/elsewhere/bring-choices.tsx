import { useMemo, useState } from 'react'
import { importEdit } from '#geo/file/import-edit'
import type { ImportChoice } from '#geo/file/import-things'
import type { ShownImport } from '#geo/file/open-import'
import { type PackedShapes, unpackedThings } from '#geo/file/packed-things'
import type { Plan } from '#geo/plan/plan'
import type { Problem } from '#geo/problem'
import { localFrame } from '#geo/space/ring'
import { notify } from '../../state/actions'
import { newIds } from '../../state/new-id'
import { usePlannerStore } from '../../state/use-planner'
import { homeOf } from '../../text/home'
import { farText } from '../../text/units'
import { counted } from '../../text/words'
import { RowProblems } from '../bloom/weather-preview'
import { useEdit, usePlan } from '../hooks'
import { type Services, useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { GroupChoice } from './bring-group'
import { SpellingChoices } from './bring-spellings'
import { choicesNow, type KeptChoices, lacksCrop } from './kept-choices'
import { comingWords, useComing } from './use-coming'

type Props = {
  readonly reader: ReturnType<Services['importReader']>
  readonly found: ShownImport
  readonly problems: readonly Problem[]
  /** What the problems are of. */
  readonly of: 'the file' | 'its rows'
  readonly kept: KeptChoices
  readonly onKeep: (kept: KeptChoices) => void
  readonly onClose: () => void
}

/** What a file would bring, group by group and on the map, until it is brought in by one step. */
export function ImportChoices({ reader, found, problems, of, kept, onKeep, onClose }: Props) {
  const store = usePlannerStore()
  const plan = usePlan()
  const edit = useEdit()
  const { keepRestorePoint } = useServices()
  const choices = useMemo(() => choicesNow(found.groups, kept), [found, kept])
  const coming = useComing(reader, found, choices)
  const [state, setState] = useState<{ readonly isBusy: boolean; readonly fault: string | null }>({
    isBusy: false,
    fault: null,
  })
  const count = coming.shapes?.kinds.length ?? 0
  const lacking = found.groups.filter(({ key }) => lacksCrop(choices[key] ?? null)).length
  const choose = (key: string, choice: ImportChoice | null) =>
    onKeep({ ...kept, touched: { ...kept.touched, [key]: choice } })
  const bring = async () => {
    setState({ isBusy: true, fault: null })
    const { planId } = store.getState().document
    try {
      const things = unpackedThings(await reader.things(choices, kept.cultivars))
      const before = store.getState().document.plan ?? plan
      try {
        await keepRestorePoint(planId ?? '', before, 'before things from a file were brought in')
      } catch (error) {
        const fault = `Nothing was changed, since no restore point could be kept: ${reasonOf(error)}`
        return setState({ isBusy: false, fault })
      }
      edit(importEdit(things, newIds(before)))
      notify(store, `${counted(things.length, 'thing')} brought in. Undo takes all of it back.`)
      onClose()
    } catch (error) {
      setState({ isBusy: false, fault: `Nothing was changed: ${reasonOf(error)}` })
    }
  }
  return (
    <div className="bring-flow">
      <RowProblems problems={problems} of={of} />
      {found.groups.map(group => (
        <GroupChoice
          key={group.key}
          group={group}
          choice={choices[group.key] ?? null}
          onChange={choice => choose(group.key, choice)}
        />
      ))}
      <SpellingChoices
        spellings={found.spellings}
        cultivars={kept.cultivars}
        onChange={cultivars => onKeep({ ...kept, cultivars })}
      />
      <p className="aside-note">A restore point of the plan is kept first: see Restore points in the menu.</p>
      <section className="bring-end stack" aria-label="What comes in" aria-busy={coming.isBehind}>
        <p role="status" className={coming.isBehind ? 'stale' : ''}>
          {coming.shapes === null
            ? coming.fault === null
              ? 'Working it out …'
              : ''
            : count === 0
              ? 'Nothing comes in.'
              : `Coming in: ${comingWords(coming.shapes.kinds)}; dashed on the map.${farWords(coming.shapes, plan)}`}
        </p>
        {[coming.fault, state.fault].map(fault =>
          fault === null ? null : (
            <p className="field-fault" role="alert" key={fault}>
              {fault}
            </p>
          ),
        )}
        <div className="actions">
          <button
            type="button"
            className="first"
            disabled={coming.shapes === null || count === 0 || state.isBusy}
            onClick={lacking > 0 ? goToCrop : bring}
          >
            {coming.shapes === null
              ? 'Bring in'
              : count === 0
                ? 'Everything is left out'
                : lacking > 0
                  ? `Choose a crop for ${counted(lacking, 'group')} first`
                  : `Bring in ${counted(count, 'thing')}`}
          </button>
          <button type="button" onClick={coming.showAll} disabled={count === 0}>
            Show all
          </button>
        </div>
      </section>
    </div>
  )
}

/** To the first choice of a crop that is still to be made: it may be far above. */
function goToCrop(): void {
  const [, crop] = document.querySelectorAll<HTMLElement>('.bring-group[data-lacks-crop="true"] select')
  crop?.focus()
}

/** Nearer than this it may well be the same farm, m. */
const farAway = 5000
/** Farther than this the flat frame says nothing of distances, m. */
const beyondAll = 100_000

/** That what comes lies far from the plan: the map then shows it alone. */
function farWords({ positions }: PackedShapes, plan: Plan): string {
  if (plan.features.length === 0 || positions.length === 0) return ''
  const { x, y } = localFrame(homeOf(plan))([positions[0]!, positions[1]!])
  const away = Math.hypot(x, y)
  if (away < farAway) return ''
  const words = away > beyondAll ? `over ${farText(beyondAll, plan.units)}` : `about ${farText(away, plan.units)}`
  return ` It lies ${words} from the plan.`
}
