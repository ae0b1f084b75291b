import type { LngLat } from '#geo/space/plane'
import { growsIn, newFeature } from './new-feature'
import type { Tool } from './tool'

export type PointKind = 'plant' | 'station' | 'mud'

type State = { readonly pointer: LngLat | null }

/** Puts one mark where the map is tapped. */
export function drawPoint(kind: PointKind): Tool<State> {
  return {
    start: { pointer: null },
    step(state, event, context) {
      switch (event.type) {
        case 'tap': {
          const { id, edit } = newFeature(kind, { type: 'Point', coordinates: event.at }, context)
          return { state: { pointer: null }, edit, selection: [id], isDone: true }
        }
        case 'hover':
          return { state: { pointer: event.at } }
        case 'cancel':
          return { state: { pointer: null }, isLeft: true }
        case 'press':
        case 'drag':
        case 'release':
        case 'lost':
        case 'finish':
        case 'back':
        case 'remove':
        case 'nudge':
        case 'type':
        case 'put':
          return { state }
        default:
          return event satisfies never
      }
    },
    ghost({ pointer }) {
      if (pointer === null) return null
      const geometry = { type: 'Point', coordinates: pointer } as const
      return { shapes: [{ kind, geometry }], handles: [], hidden: [], measure: null, pointer }
    },
    status: (_state, context) => ({
      points: 0,
      canFinish: false,
      hasVertex: false,
      ...(kind === 'plant' ? { grows: growsIn(kind, context) } : {}),
    }),
  }
}
