import { setPlanMembers } from '#geo/plan/edits-settings'
import { Menu } from '../../parts/menu'
import { closePlan, notify, setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import { useEdit, usePlan } from '../hooks'
import { useServices } from '../services'
import { useShell } from '../shell'
import { reasonOf } from '../use-loaded'
import { useOpenFile } from './use-open-file'

const themes = { paper: 'Paper', dark: 'Dark, for night counts', sun: 'High contrast, for sun' } as const

/** Files, plans, settings and looks. */
export function MainMenu() {
  return <Menu label="Menu">{close => <Items close={close} />}</Menu>
}

function Items({ close }: { readonly close: () => void }) {
  const store = usePlannerStore()
  const plan = usePlan()
  const edit = useEdit()
  const theme = usePlanner(state => state.view.theme)
  const { saveFile } = useServices()
  const { showDialog, showSide, bringIn } = useShell()
  const openFile = useOpenFile()
  const save = async () => {
    try {
      const words = await saveFile(plan)
      if (words !== null) notify(store, words)
    } catch (error) {
      notify(store, `The file was not saved: ${reasonOf(error)}`)
    }
  }
  const item = (words: string, action: () => void) => (
    <button
      type="button"
      onClick={() => {
        close()
        action()
      }}
    >
      {words}
    </button>
  )
  return (
    <>
      {item('Save as a file', save)}
      {item('Save for other programs', () => showDialog('save-other'))}
      {item('Work and calendar of the season', () => showDialog('work'))}
      {item('Open a file', openFile)}
      {item('Bring in from another program', () => bringIn({ pasted: null }))}
      {item('Plans on this device', () => showDialog('plans'))}
      {item('Restore points', () => showDialog('restore'))}
      {item('Close the plan', () => closePlan(store))}
      <hr />
      {item('Plan, bee and spring', () => showDialog('details'))}
      {item('Figures and own crops', () => showSide('settings'))}
      {item('Ground of the map', () => showDialog('ground'))}
      <hr />
      <fieldset className="menu-group">
        <legend>Units</legend>
        {(['metric', 'us'] as const).map(units => (
          <label className="option" key={units}>
            <input
              type="radio"
              name="menu-units"
              checked={plan.units === units}
              onChange={() => edit(setPlanMembers({ units }))}
            />
            {units === 'metric' ? 'Metres and hectares' : 'Feet and acres'}
          </label>
        ))}
      </fieldset>
      <fieldset className="menu-group">
        <legend>Look</legend>
        {(['paper', 'dark', 'sun'] as const).map(value => (
          <label className="option" key={value}>
            <input
              type="radio"
              name="menu-look"
              checked={theme === value}
              onChange={() => setView(store, { theme: value })}
            />
            {themes[value]}
          </label>
        ))}
      </fieldset>
      <hr />
      {item('Cautions', () => showDialog('cautions'))}
      {item('How it works', () => showDialog('about'))}
    </>
  )
}
