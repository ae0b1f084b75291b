import { useCallback } from 'react'
import { problemText } from '#geo/problem'
import { notify, openPlan } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { useServices } from '../services'
import { reasonOf } from '../use-loaded'

/** Asks for a plan file and opens it beside the plans kept here; the open one stays kept. */
export function useOpenFile(): () => Promise<void> {
  const store = usePlannerStore()
  const { openFile } = useServices()
  return useCallback(async () => {
    try {
      const outcome = await openFile()
      if (outcome === null) return
      if (outcome.ok) {
        openPlan(store, outcome.value, null)
        const count = outcome.problems.length
        if (count > 0) notify(store, `Opened “${outcome.value.name}”. ${problemText(outcome.problems[0]!)}`)
      } else {
        const [first] = outcome.problems
        notify(store, `The file was not opened. ${first ? problemText(first) : ''}`)
      }
    } catch (error) {
      notify(store, `The file was not opened: ${reasonOf(error)}`)
    }
  }, [store, openFile])
}
