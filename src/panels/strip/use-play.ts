import { useEffect, useState } from 'react'
import { setView } from '../../state/actions'
import { usePlanner, usePlannerStore } from '../../state/use-planner'
import type { Stretch } from './stretch'

/** Milliseconds that each day is shown for. */
const beat = 500

export type Play = { readonly isPlaying: boolean; start(): void; stop(): void }

/** Lets the days pass one by one from the day that is looked at, or from the first, to the last. */
export function usePlay({ from, to }: Stretch): Play {
  const store = usePlannerStore()
  const [isPlaying, setPlaying] = useState(false)
  const isOver = usePlanner(({ view }) => view.day === null || view.day + 1 > to)
  const first = Math.ceil(from)
  useEffect(() => {
    if (!isPlaying) return
    if (isOver) {
      setPlaying(false)
      return
    }
    const next = () => {
      const day = (store.getState().view.day ?? first) + 1
      if (day <= to) setView(store, { day })
    }
    const timer = setInterval(next, beat)
    return () => clearInterval(timer)
  }, [isPlaying, isOver, store, first, to])
  return {
    isPlaying,
    start() {
      const { day } = store.getState().view
      if (day === null || day < from || day + 1 > to) setView(store, { day: first })
      setPlaying(true)
    },
    stop: () => setPlaying(false),
  }
}
