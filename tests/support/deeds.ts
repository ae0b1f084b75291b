import fc from 'fast-check'
import type { Edit } from '#geo/plan/edits'
import {
  addFeatures,
  addStationInUse,
  duplicateFeatures,
  moveFeatures,
  removeFeatures,
  setGeometry,
  setProperties,
} from '#geo/plan/edits-features'
import { addSeason, removeSeason, setBloom, setReleases, setStationSeason } from '#geo/plan/edits-seasons'
import { setOwnCrop, setOwnParameter, setPlanMembers } from '#geo/plan/edits-settings'
import { putCheckAside, setColdStore, takeCheckBack } from '#geo/plan/edits-timing'
import type { Plan } from '#geo/plan/plan'
import { appleBloom, mudFeature, rowFeature, stationFeature, step } from './builders'

/** An edit of whatever the plan holds at that moment; null where it holds nothing to edit so. */
export type Deed = (plan: Plan, turn: number) => Edit | null

const somewhere = fc.tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: -40, max: 40 }))
const year = fc.integer({ min: 2024, max: 2027 })
const key = fc.constantFrom(undefined, 'gesture-a', 'gesture-b')

export function idOf(plan: Plan, pick: number): string | null {
  return plan.features.length > 0 ? plan.features[pick % plan.features.length]!.id : null
}

function onOne(make: (id: string) => Edit, pick: number): Deed {
  return plan => {
    const id = idOf(plan, pick)
    return id === null ? null : make(id)
  }
}

export const deed: fc.Arbitrary<Deed> = fc.oneof(
  somewhere.map(
    (at): Deed =>
      (_, turn) =>
        addFeatures([mudFeature(`mud-${turn}`, {}, at), rowFeature(`row-n${turn}`)]),
  ),
  fc.tuple(somewhere, year).map(
    ([at, y]): Deed =>
      (_, turn) =>
        addStationInUse(stationFeature(`s-${turn}`, {}, at), y, {}),
  ),
  fc.nat().map(pick => onOne(id => removeFeatures([id]), pick)),
  fc
    .tuple(fc.nat(), somewhere, key)
    .map(([pick, [east, north], k]) => onOne(id => moveFeatures([id], { lng: east / 1e4, lat: north / 1e4 }, k), pick)),
  fc.tuple(fc.nat(), somewhere).map(
    ([pick, by]): Deed =>
      (plan, turn) => {
        const id = idOf(plan, pick)
        const shift = { lng: by[0] / 1e4, lat: by[1] / 1e4 }
        return id === null ? null : duplicateFeatures([id], kind => `${kind}-c${turn}`, shift)
      },
  ),
  fc
    .tuple(fc.nat(), fc.string({ maxLength: 6 }), key)
    .map(([pick, name, k]) => onOne(id => setProperties(id, { name }, k), pick)),
  fc.tuple(fc.nat(), somewhere, key).map(
    ([pick, at, k]): Deed =>
      plan => {
        const stations = plan.features.filter(({ geometry }) => geometry.type === 'Point')
        const station = stations[pick % Math.max(1, stations.length)]
        return station ? setGeometry(station.id, { type: 'Point', coordinates: step(at) }, k) : null
      },
  ),
  fc.tuple(year, fc.boolean()).map(
    ([y, isThere]): Deed =>
      () =>
        setBloom(y, 'apple', isThere ? appleBloom(y) : null),
  ),
  fc
    .tuple(fc.nat(), year, fc.nat({ max: 200 }))
    .map(([pick, y, tubes]) => onOne(id => setStationSeason(y, id, { tubes }), pick)),
  fc
    .tuple(fc.nat(), year, fc.nat({ max: 99 }))
    .map(([pick, y, females]) => onOne(id => setReleases(y, id, [{ date: `${y}-04-06`, females }]), pick)),
  year.map(
    (y): Deed =>
      plan =>
        plan.seasons.some(season => season.year === y) ? removeSeason(y) : addSeason({ year: y }),
  ),
  fc.nat({ max: 9 }).map(
    (value): Deed =>
      () =>
        setOwnParameter('osmia-cornuta', 'lag', value > 5 ? null : value + 1),
  ),
  fc.nat({ max: 9 }).map(
    (value): Deed =>
      () =>
        setOwnCrop('hill-apple', value > 5 ? null : { basedOn: 'apple', appeal: 1 }),
  ),
  fc.tuple(year, fc.integer({ min: 0, max: 6 }), key).map(
    ([y, degrees, k]): Deed =>
      () =>
        setColdStore(y, degrees === 6 ? null : { from: `${y - 1}-11-01`, temperature: degrees }, k),
  ),
  fc.tuple(year, fc.constantFrom('one', 'two'), fc.string({ maxLength: 3 }), fc.boolean()).map(
    ([y, code, reason, isAside]): Deed =>
      () =>
        isAside ? putCheckAside(y, { code, at: 'row-1', reason }) : takeCheckBack(y, { code, at: 'row-1' }),
  ),
  fc.tuple(fc.string({ maxLength: 6 }), key).map(
    ([name, k]): Deed =>
      () =>
        setPlanMembers({ name }, k),
  ),
)
