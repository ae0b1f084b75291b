import { bloomRegions } from '#geo/data/own'
import { setPlanMembers } from '#geo/plan/edits-settings'
import { ChoiceField } from '../../parts/choice-field'
import { Dialog } from '../../parts/dialog'
import { TextField } from '../../parts/text-field'
import { regionNames } from '../../text/names'
import { BeeChoice } from '../first/bee-choice'
import { useEdit, usePlan } from '../hooks'

/** What holds for the plan as a whole; each change is a step that undo takes back. */
export function PlanDialog({ onClose }: { readonly onClose: () => void }) {
  const plan = usePlan()
  const edit = useEdit()
  return (
    <Dialog title="Plan, bee and spring" onClose={onClose}>
      <TextField label="Name" value={plan.name} isRequired onCommit={name => edit(setPlanMembers({ name }))} />
      <TextField label="Notes" value={plan.notes} isLong onCommit={notes => edit(setPlanMembers({ notes }))} />
      <BeeChoice
        label="Bee at stations that name no other"
        value={plan.bee}
        onCommit={bee => edit(setPlanMembers({ bee }))}
      />
      <ChoiceField
        label="Spring is most like"
        value={plan.bloomRegion}
        choices={bloomRegions.map(value => ({ value, name: regionNames[value] }))}
        onCommit={bloomRegion => edit(setPlanMembers({ bloomRegion }))}
        note="Decides the default bloom dates that are offered; dates already set stay."
      />
      <TextField
        label="Time zone"
        value={plan.timeZone}
        isRequired
        onCommit={timeZone => edit(setPlanMembers({ timeZone }))}
        note="By its international name, such as Europe/London."
      />
    </Dialog>
  )
}
