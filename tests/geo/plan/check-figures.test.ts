import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { feature, featureOf, put, sentences, spoilt, square, told } from '../file/sample-file'

/** A property of a drawn thing, a value it cannot have, and the start of the line that tells of it. */
const properties: [string, string, number, string][] = [
  ['row-3', 'spacing', 0, 'error out-of-range'],
  ['row-3', 'spacing', -2.5, 'error out-of-range'],
  ['row-3', 'spacing', 1e9, 'error out-of-range'],
  ['row-3', 'rowSpacing', 0, 'error out-of-range'],
  ['row-3', 'count', -1, 'error out-of-range'],
  ['row-3', 'count', 2.5, 'error not-whole'],
  ['row-3', 'vigour', 0, 'error out-of-range'],
  ['row-3', 'vigour', 1.01, 'error out-of-range'],
  ['row-3', 'femalesPerPlant', -0.5, 'error out-of-range'],
  ['row-3', 'femalesPerPlant', 1e-9, 'error out-of-range'],
  ['row-3', 'vigour', 1e-9, 'error out-of-range'],
  ['hedge', 'appeal', 5e-324, 'error out-of-range'],
  ['row-3', 'planted', 2019.5, 'error not-whole'],
  ['block-1', 'bearing', 361, 'error out-of-range'],
  ['block-1', 'bearing', -361, 'error out-of-range'],
  ['trees', 'spread', 0, 'error out-of-range'],
  ['beds', 'vigour', -1, 'error out-of-range'],
  ['hedge', 'blossomDensity', -1, 'error out-of-range'],
  ['hedge', 'appeal', -0.1, 'error out-of-range'],
  ['s1', 'height', -1, 'warning out-of-range'],
  ['s1', 'height', 500, 'warning out-of-range'],
  ['s1', 'facing', 720, 'warning out-of-range'],
  ['s1', 'overhang', -1, 'warning out-of-range'],
  ['s1', 'since', 20, 'warning out-of-range'],
]

describe('figures of drawn things', () => {
  it.each(properties)('%s: %s %d', (id, name, value, fault) => {
    const file = put(`features.${id}.properties.${name}`, value)
    expect(told(file)).toEqual([`${fault} at ${id}`])
    const [sentence] = sentences(readPlan(file))
    expect(sentence).toContain(`is ${value}; it should be`)
    expect(sentence).toContain(`properties.${name} in the file`)
  })

  it.each<[string, string, number]>([
    ['row-3', 'vigour', 1],
    ['row-3', 'count', 40],
    ['row-3', 'femalesPerPlant', 0],
    ['block-1', 'bearing', -360],
  ])('%s: %s %d is fine', (id, name, value) => {
    expect(told(put(`features.${id}.properties.${name}`, value))).toEqual([])
  })

  it('leaves what can be meant to the field checks', () => {
    expect(told(put('features.s1.properties.facing', 360))).toEqual(['warning facing-unsuited at s1'])
    expect(told(put('features.s1.properties.height', 0))).toEqual(['note station-low at s1'])
  })

  it('tells of a planting that never stands in the ground', () => {
    const file = put('features.block-1.properties.removed', 2019)
    expect(told(file)).toEqual(['warning never-planted at block-1'])
    expect(sentences(readPlan(file))[0]).toContain('removed in 2019, not after it is planted in 2019')
  })
})

describe('how many plants a plan breaks into', () => {
  const wide = 0.04
  it.each<[string, string, string]>([
    ['a spacing a thousandth of what was meant', put('features.block-1.properties.spacing', 0.0005), 'block-1'],
    ['a row spacing of a hair', put('features.block-1.properties.rowSpacing', 0.00001), 'block-1'],
    ['a row of plants a hair apart', put('features.row-3.properties.spacing', 0.00001), 'row-3'],
    [
      'a bed of eight square kilometres',
      put('features.beds.geometry.coordinates', [square(-1.72, 52.2, wide)]),
      'beds',
    ],
    ['a forage area as large', put('features.hedge.geometry.coordinates', [square(-1.72, 52.2, wide)]), 'hedge'],
    [
      'rows given as counts',
      spoilt(file => {
        file.features.push(
          feature(
            'a',
            'LineString',
            [
              [-1.7, 52.2],
              [-1.7, 52.201],
            ],
            { kind: 'row', crop: 'apple', count: 1_999_999 },
          ),
        )
      }),
      'a',
    ],
  ])('%s', (_, file, at) => {
    expect(told(file)).toEqual([`error too-many-plants at ${at}`])
    expect(sentences(readPlan(file))[0]).toMatch(/about \d{7,} plants and cells; at most 2000000/)
  })

  it("uses the crop's own spacing where the planting gives none", () => {
    const file = spoilt(each => {
      each.plan.crops.apple = { spacing: 0.0004 }
      delete featureOf(each, 'row-3').properties.spacing
    })
    expect(told(file)).toContain('error too-many-plants at block-1')
  })
})

describe("the plan's own settings", () => {
  const bee = 'plan.parameters.osmia-bicornis'
  it.each<[string, string, string[], RegExp]>([
    [
      'a time zone of no place',
      put('plan.timeZone', 'Europe/Nowhere'),
      ['warning time-zone-unknown at plan.timeZone'],
      /Europe\/Nowhere/,
    ],
    [
      'a negative blossom',
      put('plan.parameters.backgroundBlossom', -1),
      ['error out-of-range at plan.parameters.backgroundBlossom'],
      /0, or from 0\.000001 to 1000000 flowers/,
    ],
    [
      'a share above one',
      put('plan.parameters.referenceCropShare', 1.2),
      ['error out-of-range at plan.parameters.referenceCropShare'],
      /more than 0 and at most 1/,
    ],
    [
      'no flying hours',
      put('plan.parameters.typicalFlyingHours', 0),
      ['error out-of-range at plan.parameters.typicalFlyingHours'],
      /h/,
    ],
    [
      'a radius of nothing',
      put(`${bee}.typicalForagingRadius`, 0),
      [`error out-of-range at ${bee}`],
      /foraging radius is 0/,
    ],
    [
      'a range below nothing',
      put(`${bee}.maxForagingRange`, -5),
      [`error out-of-range at ${bee}`, `warning parameters-crossed at ${bee}`],
      /range is -5/,
    ],
    ['a spread of no days', put(`${bee}.spreadDays`, 0), [`error out-of-range at ${bee}`], /spread/],
    ['a life of no days', put(`${bee}.nestingLife`, 0), [`error out-of-range at ${bee}`], /nesting life/],
    ['an emergence of two', put(`${bee}.emergence`, 2), [`error out-of-range at ${bee}`], /emergence/],
    ['an establishment of nothing', put(`${bee}.establishment`, 0), [`error out-of-range at ${bee}`], /establishment/],
    [
      'a share of females above one',
      put(`${bee}.femaleShare`, 1.1),
      [`error out-of-range at ${bee}`],
      /share of females/,
    ],
    ['no effectiveness', put(`${bee}.effectiveness`, 0), [`error out-of-range at ${bee}`], /effectiveness/],
    [
      'flight that is full before it begins',
      put(`${bee}.flightFrom`, 30),
      [`error parameters-crossed at ${bee}`],
      /\(30\) should be below/,
    ],
    [
      'bores that pass each other',
      put(`${bee}.boreMin`, 12),
      [`warning parameters-crossed at ${bee}`, 'warning bore-unsuited at s1'],
      /smallest bore/,
    ],
    [
      'a misspelt figure',
      put('plan.parameters.backgroundBlosom', 3),
      ['warning parameter-unknown at plan.parameters.backgroundBlosom'],
      /spelling/,
    ],
    [
      "a bee's figure at the top",
      put('plan.parameters.lag', 3),
      ['warning parameter-unknown at plan.parameters.lag'],
      /belongs to a bee/,
    ],
    ["a misspelt figure of a bee's", put(`${bee}.lagg`, 3), [`warning parameter-unknown at ${bee}.lagg`], /“lagg”/],
    [
      'figures of a bee that is none',
      put('plan.parameters.apis', { lag: 3 }),
      ['warning parameter-unknown at plan.parameters.apis'],
      /“apis”/,
    ],
    ['a number for a bee', put(bee, 3), [`error parameter-misplaced at ${bee}`], /group of figures/],
    [
      'a group for a number',
      put('plan.parameters.spareTubes', { a: 1 }),
      ['error parameter-misplaced at plan.parameters.spareTubes'],
      /should be a number/,
    ],
  ])('%s', (_, file, places, words) => {
    expect(told(file)).toEqual(places)
    expect(sentences(readPlan(file))[0]).toMatch(words)
  })
})

describe('crops', () => {
  const own = { stockingRate: 600, blossomDensity: 90, appeal: 1, spacing: 2, rowSpacing: 4 }
  const late = 'plan.crops.apple-late'
  it.each<[string, string, string[], RegExp]>([
    [
      'a crop nobody knows',
      put('features.row-3.properties.crop', 'mango'),
      ['error crop-unknown at row-3'],
      /Row 3 is planted with “mango”/,
    ],
    [
      'an own crop on one nobody knows',
      put(`${late}.basedOn`, 'mango'),
      [`error crop-base-unknown at ${late}`],
      /“mango”.*cannot be counted/,
    ],
    [
      'an own crop without figures',
      put(late, { name: 'Late', stockingRate: 600 }),
      [`error crop-incomplete at ${late}`],
      /lacks figures: blossom density, appeal, spacing, row spacing/,
    ],
    [
      'an own crop based on itself',
      put(`${late}.basedOn`, 'apple-late'),
      [`error crop-loop at ${late}`],
      /circle of crops through “apple-late”/,
    ],
    [
      'a circle of two',
      put('plan.crops', { 'apple-late': { basedOn: 'b' }, b: { basedOn: 'apple-late' } }),
      [`error crop-loop at ${late}`, 'warning crop-loop at plan.crops.b'],
      /circle/,
    ],
    [
      'a complete crop on one nobody knows',
      put(late, { ...own, basedOn: 'mango' }),
      [`warning crop-base-unknown at ${late}`],
      /complete all the same/,
    ],
    [
      'an unused crop without figures',
      put('plan.crops.quinces', { name: 'Q' }),
      ['warning crop-incomplete at plan.crops.quinces'],
      /The crop Q/,
    ],
    [
      'a stocking rate below nothing',
      put(`${late}.stockingRate`, -1),
      [`error out-of-range at ${late}`],
      /The crop Late apple: the stocking rate is -1/,
    ],
    ['a spacing of nothing', put(`${late}.spacing`, 0), [`error out-of-range at ${late}`], /spacing is 0/],
  ])('%s', (_, file, places, words) => {
    expect(told(file)).toEqual(places)
    expect(sentences(readPlan(file))[0]).toMatch(words)
  })

  it.each<[string, unknown]>([
    ['five figures of its own', { ...own }],
    ['figures of another own crop', { basedOn: 'other', name: 'L' }],
    ['a built-in crop of the same name', { basedOn: 'apple' }],
  ])('%s make a crop', (_, crop) => {
    const file = spoilt(each => {
      each.plan.crops = { 'apple-late': crop, other: { ...own }, apple: { basedOn: 'apple', appeal: 0.9 } }
    })
    expect(told(file)).toEqual([])
  })
})
