import { useEffect, useMemo, useRef, useState } from 'react'
import type { ImportChoices } from '#geo/file/import-things'
import type { ShownImport } from '#geo/file/open-import'
import type { PackedShapes } from '#geo/file/packed-things'
import type { FeatureKind } from '#geo/plan/plan'
import { listed } from '#geo/wording/plain'
import { setView } from '../../state/actions'
import { usePlannerStore } from '../../state/use-planner'
import { kindNames } from '../../text/names'
import { counted } from '../../text/words'
import type { Services } from '../services'
import { reasonOf } from '../use-loaded'
import { lacksCrop } from './kept-choices'

export type ComingNow = {
  /** What the choices come to; null until it is known for the first time. */
  readonly shapes: PackedShapes | null
  /** Choices were made since, and are being followed. */
  readonly isBehind: boolean
  readonly fault: string | null
}

/** What would come in, worked out by the reader and shown on the map as long as it is looked through. */
export function useComing(
  reader: ReturnType<Services['importReader']>,
  found: ShownImport,
  choices: ImportChoices,
): ComingNow & { readonly showAll: () => void } {
  const store = usePlannerStore()
  const [now, setNow] = useState<ComingNow>({ shapes: null, isBehind: true, fault: null })
  // Places only: a crop that is still to be chosen changes none.
  const asked = useMemo(() => JSON.stringify(withAnyCrop(choices)), [choices])
  // One question at a time, then the newest: a long track is not cleaned once for every key pressed.
  const line = useRef({ isBusy: false, wanted: '', found })
  useEffect(() => {
    const queue = line.current
    queue.wanted = asked
    queue.found = found
    setNow(before => ({ ...before, isBehind: true }))
    const next = async (): Promise<void> => {
      if (queue.isBusy) return
      queue.isBusy = true
      const { wanted, found: of } = queue
      try {
        const shapes = await reader.shapes(JSON.parse(wanted) as ImportChoices)
        if (queue.wanted === wanted && queue.found === of) setNow({ shapes, isBehind: false, fault: null })
      } catch (error) {
        if (queue.wanted === wanted && queue.found === of)
          setNow({ shapes: null, isBehind: false, fault: `It could not be worked out: ${reasonOf(error)}` })
      }
      queue.isBusy = false
      if (queue.wanted !== wanted || queue.found !== of) await next()
    }
    void next()
  }, [reader, found, asked])
  const { shapes } = now
  const fitted = useRef<ShownImport | null>(null)
  useEffect(() => {
    if (shapes === null) return
    const { coming } = store.getState().view
    // The map goes to what was read, and stays where it is put while choices are made.
    const isNew = fitted.current !== found && shapes.positions.length > 0
    if (isNew) fitted.current = found
    const fit = (coming?.fit ?? 0) + (isNew ? 1 : 0)
    setView(store, { coming: { shapes, words: `Coming in: ${comingWords(shapes.kinds)}`, fit } })
  }, [store, shapes, found])
  useEffect(() => () => setView(store, { coming: null }), [store])
  const showAll = () => {
    const { coming } = store.getState().view
    if (coming !== null) setView(store, { coming: { ...coming, fit: coming.fit + 1 } })
  }
  return { ...now, showAll }
}

/** `12 rows and 3 nest stations`. */
export function comingWords(kinds: readonly FeatureKind[]): string {
  const counts = new Map<FeatureKind, number>()
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  if (counts.size === 0) return 'nothing'
  return listed([...counts].map(([kind, count]) => counted(count, kindNames[kind].one, kindNames[kind].many)))
}

function withAnyCrop(choices: ImportChoices): ImportChoices {
  return Object.fromEntries(
    Object.entries(choices).map(([key, choice]) => [
      key,
      choice !== null && lacksCrop(choice) ? { ...choice, crop: 'any' } : choice,
    ]),
  )
}
