import { describe, expect, test } from 'vitest'
import { beeParameterNames, bees } from '#geo/data/bees'
import { cropFigureNames } from '#geo/data/crop-record'
import { crops } from '#geo/data/crops'
import { beeIds } from '#geo/data/own'
import { siteParameterNames, siteParameters } from '#geo/data/parameters'
import { appleFullBloomDay, forageSettings, type OwnValues, settingsFor, varyKeys } from '#geo/data/settings'

const none: OwnValues = { parameters: {}, crops: {} }
const five = { stockingRate: 500, blossomDensity: 80, appeal: 0.9, spacing: 2, rowSpacing: 4 }
const withCrops = (own: OwnValues['crops']) => settingsFor({ parameters: {}, crops: own }).crops

describe('without own values', () => {
  const settings = settingsFor(none)

  test('every figure is that of the tables', () => {
    for (const name of siteParameterNames) expect(settings.site[name]).toBe(siteParameters[name].value)
    for (const id of beeIds) {
      for (const name of beeParameterNames) expect(settings.bees[id][name]).toBe(bees[id].parameters[name].value)
    }
    expect(Object.keys(settings.crops)).toEqual(Object.keys(crops))
    for (const [id, record] of Object.entries(crops)) {
      for (const name of cropFigureNames) expect(settings.crops[id]![name]).toBe(record.figures[name].value)
    }
  })

  test('apple keeps the rule per tree and its offsets', () => {
    expect(settings.crops.apple).toMatchObject({
      name: 'Apple',
      botanicalName: 'Malus domestica',
      kind: 'tree',
      femalesPerPlant: { low: 1, value: 2.5, high: 3 },
      bloomOffset: { continental: { low: -7, mid: 0, high: 7 } },
    })
    expect(settings.crops.quince!.femalesPerPlant).toBeNull()
  })

  test('can be sent to a worker', () => {
    expect(structuredClone(settings)).toEqual(settings)
  })
})

describe("the grower's own parameters", () => {
  const settings = settingsFor({
    parameters: {
      backgroundBlossom: 7,
      typicalForagingRadius: 5,
      somethingElse: 1,
      'osmia-lignaria': { establishment: 0.61, somethingElse: 2 },
      'osmia-unknown': { establishment: 0.1 },
    },
    crops: {},
  })

  test('go before the tables, each where it belongs', () => {
    expect(settings.site.backgroundBlossom).toBe(7)
    expect(settings.site.spareTubes).toBe(siteParameters.spareTubes.value)
    expect(settings.bees['osmia-lignaria'].establishment).toBe(0.61)
    expect(settings.bees['osmia-lignaria'].emergence).toBe(bees['osmia-lignaria'].parameters.emergence.value)
    expect(settings.bees['osmia-cornuta'].establishment).toBe(bees['osmia-cornuta'].parameters.establishment.value)
  })

  test('of unknown names, or in the wrong place, change nothing', () => {
    expect(settings.bees['osmia-lignaria'].typicalForagingRadius).toBe(67.1)
    expect(Object.keys(settings.site)).toEqual([...siteParameterNames])
    expect(Object.keys(settings.bees)).toEqual([...beeIds])
    expect(Object.keys(settings.bees['osmia-lignaria'])).toEqual([...beeParameterNames])
  })

  test('a number where a species belongs, or a group where a number belongs, is passed over', () => {
    const odd = settingsFor({ parameters: { 'osmia-lignaria': 3, backgroundBlossom: { a: 1 } }, crops: {} })
    expect(odd).toEqual(settingsFor(none))
  })
})

describe("the grower's own crops", () => {
  test('take what they lack from the crop they are based on', () => {
    const late = withCrops({ 'apple-late': { basedOn: 'apple', name: 'Late apple', stockingRate: 610 } })['apple-late']!
    expect(late).toEqual({ ...settingsFor(none).crops.apple, id: 'apple-late', name: 'Late apple', stockingRate: 610 })
  })

  test('may stand over a crop of the tables', () => {
    const changed = withCrops({ apple: { appeal: 0.5 } })
    expect(changed.apple).toEqual({ ...settingsFor(none).crops.apple, appeal: 0.5 })
    expect(changed.peach).toEqual(settingsFor(none).crops.peach)
  })

  test('may be based on another own crop, the nearest figure going first', () => {
    const crops = withCrops({
      a: { basedOn: 'b', spacing: 1.1 },
      b: { basedOn: 'pear-european', spacing: 9, rowSpacing: 5 },
    })
    expect(crops.a).toMatchObject({
      id: 'a',
      name: 'a',
      spacing: 1.1,
      rowSpacing: 5,
      appeal: 0.7,
      botanicalName: 'Pyrus communis',
    })
  })

  test('with all five figures need no base, and then have no bloom to start from', () => {
    const medlar = withCrops({ medlar: { ...five, name: 'Medlar' } }).medlar!
    expect(medlar).toMatchObject({ ...five, id: 'medlar', name: 'Medlar', bloomOffset: null, femalesPerPlant: null })
    expect(medlar.firstToFull).toBeGreaterThan(0)
    expect(medlar.fullToEnd).toBeGreaterThan(0)
  })

  test.each(Object.keys(five))('that lack %s and a base are left out', name => {
    expect(Object.keys(withCrops({ medlar: { ...five, [name]: undefined } }))).not.toContain('medlar')
  })

  test('based on themselves, on each other or on nothing known do not hang', () => {
    const found = withCrops({
      self: { basedOn: 'self' },
      left: { basedOn: 'right', ...five },
      right: { basedOn: 'left' },
      lost: { basedOn: 'nowhere' },
      odd: { basedOn: 'constructor' },
      apple: { basedOn: 'apple', spacing: 3 },
    })
    expect(Object.keys(found).sort()).toEqual([...Object.keys(crops), 'left', 'right'].sort())
    expect(found.apple!.spacing).toBe(3)
  })
})

describe('vary', () => {
  test.each(varyKeys)('%s takes table values to both ends and leaves all else', key => {
    const [scope, name] = key.split('.') as [string, string]
    const base = settingsFor(none)
    for (const end of ['low', 'high'] as const) {
      const varied = settingsFor(none, { [key]: end })
      if (scope === 'site') {
        const expected = siteParameters[name as keyof typeof siteParameters][end]
        expect(varied).toEqual({ ...base, site: { ...base.site, [name]: expected } })
      } else if (scope === 'bee') {
        for (const id of beeIds) {
          const expected = bees[id].parameters[name as (typeof beeParameterNames)[number]][end]
          expect(varied.bees[id]).toEqual({ ...base.bees[id], [name]: expected })
        }
      } else {
        for (const [id, record] of Object.entries(crops)) {
          const expected = record.figures[name as (typeof cropFigureNames)[number]][end]
          expect(varied.crops[id]).toEqual({ ...base.crops[id], [name]: expected })
        }
      }
    }
  })

  test("leaves the grower's own values, given or inherited from an own crop", () => {
    const own: OwnValues = {
      parameters: { backgroundBlossom: 7, 'osmia-lignaria': { establishment: 0.61 } },
      crops: { late: { basedOn: 'apple', stockingRate: 610 }, later: { basedOn: 'late' } },
    }
    const low = settingsFor(own, {
      'site.backgroundBlossom': 'low',
      'bee.establishment': 'low',
      'crop.stockingRate': 'low',
    })
    expect(low.site.backgroundBlossom).toBe(7)
    expect(low.bees['osmia-lignaria'].establishment).toBe(0.61)
    expect(low.bees['osmia-cornuta'].establishment).toBe(bees['osmia-cornuta'].parameters.establishment.low)
    expect([low.crops.late!.stockingRate, low.crops.later!.stockingRate]).toEqual([610, 610])
    expect(low.crops.apple!.stockingRate).toBe(250)
  })

  test.each(['site.blossom', 'bee.backgroundBlossom', 'establishment', 'crop.name'])('does not know %s', key => {
    expect(() => settingsFor(none, { [key]: 'low' })).toThrow(RangeError)
  })
})

test('forage plants and the day of apple bloom are plain numbers', () => {
  expect(forageSettings.blackthorn).toMatchObject({ blossomDensity: 400, appeal: 0.8, firstToFull: 5, fullToEnd: 11 })
  expect(forageSettings.blackthorn!.bloomOffset['southern-england']).toEqual({ low: -35, mid: -22, high: -10 })
  expect(appleFullBloomDay.continental).toEqual({ low: 108, mid: 129, high: 145 })
})
