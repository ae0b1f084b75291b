import { useMemo, useState } from 'react'
import type { Import } from '#geo/file/import'
import { type ImportChoice, importEdit, needsCrop } from '#geo/file/import-edit'
import type { Problem } from '#geo/problem'
import { notify } from '../../state/actions'
import { newIds } from '../../state/new-id'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { counted } from '../../text/words'
import { RowProblems } from '../bloom/weather-preview'
import { useEdit, usePlan } from '../hooks'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'
import { GroupChoice } from './bring-group'
import { ImportPreview } from './bring-preview'
import { SpellingChoices } from './bring-spellings'

type Choices = Readonly<Record<string, ImportChoice | null>>
type Props = {
  readonly found: Import
  readonly problems: readonly Problem[]
  /** What the problems are of. */
  readonly of: 'the file' | 'its rows'
  readonly onAgain: () => void
  readonly onClose: () => void
}

/** What a file would bring, group by group, until it is brought in by one step. */
export function ImportChoices({ found, problems, of, onAgain, onClose }: Props) {
  const store = usePlannerStore()
  const plan = usePlan()
  const planId = usePlanner(state => state.document.planId) ?? ''
  const edit = useEdit()
  const { keepRestorePoint } = useServices()
  const [choices, setChoices] = useState<Choices>(() => firstChoices(found))
  const [cultivars, setCultivars] = useState<Readonly<Record<string, string>>>({})
  const [fault, setFault] = useState<string | null>(null)
  const coming = useMemo(
    // Places only: a crop that is still to be chosen changes none, and ids of one look need be no more than different.
    () =>
      importEdit(found, withAnyCrop(choices), { newId: idsOfOneLook() })
        .apply({ ...plan, features: [] })
        .features.map(({ geometry }) => geometry),
    [found, choices, plan],
  )
  const lacking = found.groups.filter(({ key }) => lacksCrop(choices[key] ?? null)).length
  const bring = async () => {
    try {
      await keepRestorePoint(planId, plan, 'before things from a file were brought in')
    } catch (error) {
      setFault(`Nothing was changed, since no restore point could be kept: ${reasonOf(error)}`)
      return
    }
    edit(importEdit(found, choices, { newId: newIds(plan), cultivars }))
    notify(store, `${counted(coming.length, 'thing')} brought in. Undo takes all of it back.`)
    onClose()
  }
  return (
    <div className="stack">
      <RowProblems problems={problems} of={of} />
      {found.groups.map(group => (
        <GroupChoice
          key={group.key}
          group={group}
          name={group.count === 1 ? found.items.find(item => item.group === group.key)?.properties.name : undefined}
          isWalked={found.items.some(item => item.group === group.key && item.track !== null)}
          choice={choices[group.key] ?? null}
          onChange={choice => setChoices({ ...choices, [group.key]: choice })}
        />
      ))}
      <SpellingChoices spellings={found.spellings} cultivars={cultivars} onChange={setCultivars} />
      <ImportPreview before={plan.features.map(({ geometry }) => geometry)} coming={coming} />
      {fault === null ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <div className="actions">
        <button type="button" className="first" disabled={coming.length === 0 || lacking > 0} onClick={bring}>
          {coming.length === 0
            ? 'Everything is left out'
            : lacking > 0
              ? `Choose a crop for ${counted(lacking, 'group')} first`
              : `Bring in ${counted(coming.length, 'thing')}`}
        </button>
        <button type="button" onClick={onAgain}>
          Another file
        </button>
      </div>
      <p className="aside-note">A restore point of the plan is kept first: see Restore points in the menu.</p>
    </div>
  )
}

function idsOfOneLook(): () => string {
  let count = 0
  return () => {
    count += 1
    return `look-${count}`
  }
}

function firstChoices({ groups }: Import): Choices {
  return Object.fromEntries(
    groups.map(({ key, kind, crop }) => [key, needsCrop(kind) ? { kind, crop: crop ?? '' } : { kind }]),
  )
}

function lacksCrop(choice: ImportChoice | null): boolean {
  return choice !== null && needsCrop(choice.kind) && !choice.crop
}

function withAnyCrop(choices: Choices): Choices {
  return Object.fromEntries(
    Object.entries(choices).map(([key, choice]) => [
      key,
      choice !== null && lacksCrop(choice) ? { ...choice, crop: 'any' } : choice,
    ]),
  )
}
