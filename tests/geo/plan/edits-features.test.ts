import { describe, expect, it } from 'vitest'
import { compose, labelOf } from '#geo/plan/edits'
import {
  addFeatures,
  addStationInUse,
  duplicateFeatures,
  moveFeatures,
  removeFeatures,
  setGeometry,
  setProperties,
} from '#geo/plan/edits-features'
import { type Feature, type Plan, seasonOf } from '#geo/plan/plan'
import {
  appleBloom,
  blockFeature,
  frozen,
  keepoutFeature,
  rowFeature,
  smallPlan,
  stationFeature,
  step,
} from '../../support/builders'

const plan = frozen(smallPlan())

function featureOf(from: Plan, id: string): Feature {
  return from.features.find(feature => feature.id === id)!
}

describe('adding', () => {
  it('puts new things after the others and shares these', () => {
    const mud = rowFeature('row-9')
    const after = addFeatures([mud]).apply(plan)
    expect(after.features.slice(0, -1)).toEqual(plan.features)
    expect(after.features.every((feature, index) => index === 5 || feature === plan.features[index])).toBe(true)
    expect(after.features.at(-1)).toEqual(mud)
    expect(after.seasons).toBe(plan.seasons)
  })

  it('refuses an id that is taken, in the plan or twice in the list', () => {
    expect(() => addFeatures([rowFeature('row-1')]).apply(plan)).toThrow(RangeError)
    expect(() => addFeatures([rowFeature('row-9'), rowFeature('row-9')]).apply(plan)).toThrow(RangeError)
  })

  it('keeps as many decimals of a position as a file does', () => {
    const drawn = stationFeature('station-9')
    const geometry = { type: 'Point', coordinates: [-1.70000000049, 52.20000000051] } as const
    const after = addFeatures([{ ...drawn, geometry }]).apply(plan)
    expect(after.features.at(-1)!.geometry.coordinates).toEqual([-1.7, 52.200000001])
  })

  it('names what is added', () => {
    const words = (features: Feature[]) => labelOf(addFeatures(features), plan)
    expect(words([rowFeature('row-9')])).toBe('Add row')
    expect(words([rowFeature('row-9', { name: 'Hill row' })])).toBe('Add row Hill row')
    expect(words([rowFeature('row-9', { name: 'Row 9' })])).toBe('Add Row 9')
    expect(words([rowFeature('row-9'), rowFeature('row-8')])).toBe('Add 2 rows')
    expect(words([rowFeature('row-9'), blockFeature('block-8')])).toBe('Add 2 things')
    expect(words([keepoutFeature('keepout-1', { name: 'Play area' })])).toBe('Add no-station ground Play area')
  })

  it('adds a station and its use as one edit', () => {
    const edit = addStationInUse(stationFeature('station-9', { name: 'Barn' }), 2026, { tubes: 60 })
    const after = edit.apply(plan)
    expect(labelOf(edit, plan)).toBe('Add station Barn')
    expect(featureOf(after, 'station-9').properties.name).toBe('Barn')
    expect(seasonOf(after, 2026)!.stations!['station-9']).toEqual({ tubes: 60 })
    expect(seasonOf(after, 2025)).toBe(seasonOf(plan, 2025))
  })
})

describe('removing', () => {
  it('takes a station out of all seasons', () => {
    const after = removeFeatures(['station-1']).apply(plan)
    expect(after.features.map(({ id }) => id)).toEqual(['row-1', 'row-2', 'station-2', 'forage-1'])
    expect(after.seasons.map(season => season.stations)).toEqual([undefined, undefined])
  })

  it('takes the own bloom of a forage area away, and leaves that of crops', () => {
    const after = removeFeatures(['forage-1', 'row-1', 'row-2']).apply(plan)
    expect(seasonOf(after, 2026)!.bloom).toEqual({ apple: appleBloom(2026) })
    expect(seasonOf(after, 2025)).toBe(seasonOf(plan, 2025))
  })

  it('keeps what was recorded: it happened', () => {
    const [first, second] = plan.seasons
    const records = { 'station-1': { visits: [{ date: '2025-05-20', capped: 41 }] } }
    const fruitSet = { 'row-1': { flowers: 200, fruit: 31 } }
    const recorded = { ...plan, seasons: [{ ...first!, records, fruitSet }, second!] }
    const after = removeFeatures(['station-1', 'row-1']).apply(recorded)
    expect(after.seasons[0]).toEqual({ year: 2025, bloom: { apple: appleBloom(2025) }, records, fruitSet })
  })

  it('leaves the bloom of a crop that has the name of a vanished thing', () => {
    const named = addFeatures([rowFeature('apple', { crop: 'pear' })]).apply(plan)
    const after = removeFeatures(['apple']).apply(named)
    expect(seasonOf(after, 2026)!.bloom!.apple).toEqual(appleBloom(2026))
  })

  it('changes nothing where nothing is there', () => {
    expect(removeFeatures(['row-77']).apply(plan)).toBe(plan)
    expect(removeFeatures([]).apply(plan)).toBe(plan)
  })

  it('names one thing, or counts several', () => {
    expect(labelOf(removeFeatures(['station-1']), plan)).toBe('Remove station North gate')
    expect(labelOf(removeFeatures(['row-1', 'row-2']), plan)).toBe('Remove 2 rows')
    expect(labelOf(removeFeatures(['row-1', 'forage-1']), plan)).toBe('Remove 2 things')
  })
})

describe('changing one thing', () => {
  it('gives a new place and shares everything else', () => {
    const edit = setGeometry('station-1', { type: 'Point', coordinates: step([3, 3]) }, 'gesture-1')
    const after = edit.apply(plan)
    expect(labelOf(edit, plan)).toBe('Move station North gate')
    expect(edit.key).toBe('gesture-1')
    expect(featureOf(after, 'station-1').geometry.coordinates).toEqual(step([3, 3]))
    expect(featureOf(after, 'station-1').properties).toBe(featureOf(plan, 'station-1').properties)
    expect(featureOf(after, 'row-1')).toBe(featureOf(plan, 'row-1'))
  })

  it('reshapes lines and areas', () => {
    const line = { type: 'LineString', coordinates: [step([0, 0]), step([4, 4])] } as const
    expect(labelOf(setGeometry('row-1', line), plan)).toBe('Reshape Row 1')
    expect(featureOf(setGeometry('row-1', line).apply(plan), 'row-1').geometry).toEqual(line)
  })

  it('sets properties, and takes those away that are undefined', () => {
    const edit = setProperties('row-2', { spacing: 2, cultivar: undefined })
    expect(featureOf(edit.apply(plan), 'row-2').properties).toEqual({
      kind: 'row',
      crop: 'apple',
      name: 'Row 2',
      spacing: 2,
    })
    expect(labelOf(edit, plan)).toBe('Change spacing and cultivar of Row 2')
    expect(labelOf(setProperties('row-2', { name: 'Top row' }), plan)).toBe('Rename Row 2')
    expect(labelOf(setProperties('row-2', { rowSpacing: 5 }), plan)).toBe('Change row spacing of Row 2')
    expect(labelOf(setProperties('row-2', { rowSpacing: 5, spacing: 2, vigour: 1 }), plan)).toBe(
      'Change details of Row 2',
    )
  })

  it('changes nothing where the values are there already', () => {
    expect(setProperties('row-2', { cultivar: 'Late', spacing: undefined }).apply(plan)).toBe(plan)
  })

  it('refuses an id that the plan does not have', () => {
    expect(() => setProperties('row-77', { name: 'x' }).apply(plan)).toThrow(RangeError)
    expect(() => setGeometry('row-77', { type: 'Point', coordinates: step([0, 0]) }).apply(plan)).toThrow(RangeError)
    expect(() => moveFeatures(['row-1', 'row-77'], { lng: 1e-4, lat: 0 }).apply(plan)).toThrow(RangeError)
  })
})

describe('moving', () => {
  it('moves positions of every type of geometry by the same step', () => {
    const after = moveFeatures(['row-1', 'station-1', 'forage-1'], { lng: 2e-4, lat: -1e-4 }).apply(plan)
    // A step of 11 m changes a degree's length by two parts in a million: 2e-9 degrees in 70 m.
    const near = (positions: unknown, wanted: readonly (readonly number[])[]) => {
      for (const [i, value] of [positions].flat(3).entries()) expect(value).toBeCloseTo(wanted.flat()[i]!, 8)
    }
    near(featureOf(after, 'row-1').geometry.coordinates, [step([2, -1]), step([12, -1])])
    near(featureOf(after, 'station-1').geometry.coordinates, [step([7, 0])])
    const ring = [step([10, 2]), step([13, 2]), step([13, 5]), step([10, 5]), step([10, 2])]
    near(featureOf(after, 'forage-1').geometry.coordinates, ring)
    expect(featureOf(after, 'row-2')).toBe(featureOf(plan, 'row-2'))
  })

  it('keeps altitudes', () => {
    const high = { type: 'Point', coordinates: [-1.7, 52.2, 81.5] } as const
    const raised = setGeometry('station-1', high).apply(plan)
    const after = moveFeatures(['station-1'], { lng: 1e-4, lat: 0 }).apply(raised)
    expect(featureOf(after, 'station-1').geometry.coordinates).toEqual([-1.6999, 52.2, 81.5])
  })

  it('changes nothing for a step of nothing', () => {
    expect(moveFeatures(['row-1'], { lng: 0, lat: 0 }).apply(plan)).toBe(plan)
    expect(moveFeatures([], { lng: 1, lat: 0 }).apply(plan)).toBe(plan)
  })
})

describe('copying', () => {
  const ids = (): ((kind: string) => string) => {
    let count = 0
    return kind => `${kind}-copy-${++count}`
  }

  it('copies things with new ids, a step away, under a name that says so', () => {
    const edit = duplicateFeatures(['station-2', 'row-1'], ids(), { lng: 0, lat: 1e-4 })
    const after = edit.apply(plan)
    expect(after.features.slice(0, 5)).toEqual(plan.features)
    expect(after.features.slice(5).map(({ id }) => id)).toEqual(['row-copy-1', 'station-copy-2'])
    expect(after.features[5]!.properties.name).toBe('Row 1 copy')
    const copy = after.features[5]!.geometry.coordinates.flat()
    for (const [i, value] of [step([0, 1]), step([10, 1])].flat().entries()) expect(copy[i]).toBeCloseTo(value, 8)
    expect(after.features[6]!.properties).not.toHaveProperty('name')
    expect(labelOf(edit, plan)).toBe('Copy 2 things')
  })

  it('gives the same plan when it is applied again', () => {
    const edit = duplicateFeatures(['row-1'], ids(), { lng: 0, lat: 1e-4 })
    expect(edit.apply(plan)).toEqual(edit.apply(plan))
  })

  it('copies the use of a station in the latest season, or from a year on, and no records', () => {
    const copy = (year?: number) => duplicateFeatures(['station-1'], ids(), { lng: 0, lat: 1e-4 }, year).apply(plan)
    const usesOf = (from: Plan) => from.seasons.map(season => season.stations!['station-copy-1'])
    const [before, now] = plan.seasons.map(season => season.stations!['station-1'])
    expect(usesOf(copy())).toEqual([undefined, now])
    expect(usesOf(copy(2025))).toEqual([before, now])
  })

  it('copies the own bloom of an area', () => {
    const after = duplicateFeatures(['forage-1'], ids(), { lng: 0, lat: 1e-4 }).apply(plan)
    const { bloom } = seasonOf(after, 2026)!
    expect(bloom!['forage-copy-1']).toEqual(bloom!['forage-1'])
    expect(after.seasons[0]).toBe(plan.seasons[0])
  })
})

describe('several edits as one', () => {
  it('applies them in order under one label', () => {
    const edit = compose(
      'Lay out the hill',
      [addFeatures([rowFeature('row-9')]), setProperties('row-9', { name: 'Hill' })],
      'k',
    )
    expect(edit.apply(plan).features.at(-1)!.properties.name).toBe('Hill')
    expect(labelOf(edit, plan)).toBe('Lay out the hill')
    expect(edit.key).toBe('k')
  })
})
