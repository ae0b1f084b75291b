import { describe, expect, test } from 'vitest'
import { beeParameterNames, bees } from '#geo/data/bees'
import { bloomErrors, bloomHeat } from '#geo/data/bloom-heat'
import { type BoundedName, parameterBounds } from '#geo/data/bounds'
import { chillModelSources } from '#geo/data/chill-models'
import { chillNeeds } from '#geo/data/chill-needs'
import { crops, forages } from '#geo/data/crops'
import { cultivarOffsets } from '#geo/data/cultivars'
import { malesBefore, outdoorSpread, searchDays, searchSpread } from '#geo/data/emergence-figures'
import { sourcesOf } from '#geo/data/figure'
import { flyingModel } from '#geo/data/flying-model'
import { frostDays, frostKill } from '#geo/data/frost'
import { judgingFigures } from '#geo/data/judging-figures'
import { beeIds, bloomRegions } from '#geo/data/own'
import type { Parameter, Unit } from '#geo/data/parameter'
import { appleFullBloom, siteParameterNames, siteParameters } from '#geo/data/parameters'
import { coldDays, seasonWork } from '#geo/data/season-work'
import { sitingFigures } from '#geo/data/siting-figures'
import { type SourceKey, sources } from '#geo/data/sources'
import { type Threshold, thresholds } from '#geo/data/thresholds'
import { adviceFigures, longCold, mostColdDegrees, timingFigures } from '#geo/data/timing-figures'
import { trackFigures } from '#geo/data/track-figures'

type Named = readonly [name: string, parameter: Parameter]

const named = (of: string, figures: Readonly<Record<string, Parameter>>): Named[] =>
  Object.entries(figures).map(([name, parameter]) => [`${of}.${name}`, parameter])

const cropFigures = Object.values(crops).flatMap(crop => [
  ...named(crop.id, crop.figures),
  ...named(`${crop.id}.bloomOffset`, crop.bloomOffset),
  ...named(crop.id, { flowers: crop.flowers, bloomDays: crop.bloomDays, mustSet: crop.shareOfFlowersThatMustSet }),
  ...(crop.femalesPerPlant ? named(crop.id, { femalesPerPlant: crop.femalesPerPlant }) : []),
])
const forageFigures = Object.values(forages).flatMap(({ id, name, botanicalName, bloomOffset, ...figures }) => [
  ...named(id, figures),
  ...named(`${id}.bloomOffset`, bloomOffset),
])
const all: Named[] = [
  ...named('flying', flyingModel),
  ...Object.entries(bloomHeat).flatMap(([crop, { base, total }]) => named(`${crop}.heat`, { base, total })),
  ...named('bloomErrors', bloomErrors),
  ...Object.entries(cultivarOffsets).flatMap(([crop, offsets]) => named(`${crop}.cultivar`, offsets)),
  ...named('chill', chillNeeds),
  ...named('frost', frostDays),
  ...Object.entries(frostKill).flatMap(([crop, stages]) =>
    Object.values(stages).flatMap(({ name, tenth, most }) => named(`${crop}.frost.${name}`, { tenth, most })),
  ),
  ...named('siting', sitingFigures),
  ...named('site', siteParameters),
  ...named('appleFullBloom', appleFullBloom),
  ...beeIds.flatMap(id => named(id, bees[id].parameters)),
  ...cropFigures,
  ...forageFigures,
  ...named('work', seasonWork),
  ...named('cold', coldDays),
  ...named('judging', judgingFigures),
  ...named('track', trackFigures),
]

const units: Readonly<Record<Unit, true>> = {
  m: true,
  mm: true,
  d: true,
  h: true,
  s: true,
  degC: true,
  'degC d': true,
  'm/s': true,
  1: true,
  share: true,
  'females/ha': true,
  'females/plant': true,
  'flowers/m2': true,
  'flowers/plant': true,
  'flowers/m': true,
  cells: true,
  tubes: true,
  portions: true,
  females: true,
  money: true,
}

describe('every figure', () => {
  test('has a known unit and a range round its value', () => {
    for (const [name, figure] of all) {
      expect(Object.hasOwn(units, figure.unit), name).toBe(true)
      for (const end of [figure.low, figure.value, figure.high]) expect(Number.isFinite(end), name).toBe(true)
      expect(figure.low <= figure.value && figure.value <= figure.high, name).toBe(true)
      if (figure.unit === 'share') expect(figure.low >= 0 && figure.high <= 1, name).toBe(true)
    }
  })

  test('has a basis, sources that exist and a sentence on where it comes from', () => {
    for (const [name, figure] of all) {
      expect(['measured', 'derived', 'assumed'], name).toContain(figure.basis)
      expect(sourcesOf(figure).length, name).toBeGreaterThan(0)
      for (const key of sourcesOf(figure)) expect(Object.hasOwn(sources, key), `${name}: ${key}`).toBe(true)
      expect(figure.about, name).toMatch(/^[A-Z0-9].{8,}\.$/)
    }
  })

  test('measured names a publication; assumed names our own choice or memory', () => {
    for (const [name, figure] of all) {
      const seen = sourcesOf(figure).map(key => sources[key].seen)
      if (figure.basis === 'measured')
        expect(
          seen.some(how => how !== 'memory'),
          name,
        ).toBe(true)
      if (figure.basis === 'assumed') expect(seen, name).toContain('memory')
    }
  })

  test('is not called derived where all that it stands on is assumed', () => {
    for (const { id, figures, flowers } of Object.values(crops)) {
      const inputs = [flowers, figures.spacing, figures.rowSpacing]
      const expected = inputs.every(({ basis }) => basis === 'assumed') ? 'assumed' : 'derived'
      expect(figures.blossomDensity.basis, id).toBe(expected)
    }
    const guesses = Object.values(crops).filter(({ figures }) => figures.blossomDensity.basis === 'assumed')
    expect(guesses).toHaveLength(14)
    for (const [name, figure] of all) {
      if (figure.basis === 'derived')
        expect(
          sourcesOf(figure).some(key => sources[key].seen !== 'memory'),
          name,
        ).toBe(true)
    }
  })

  test('keeps the hard bounds, at its ends too', () => {
    let bounded = 0
    for (const [name, figure] of all) {
      const key = name.slice(name.lastIndexOf('.') + 1)
      if (!Object.hasOwn(parameterBounds, key)) continue
      bounded += 1
      for (const value of [figure.low, figure.value, figure.high]) {
        const { low, high, isOpen } = parameterBounds[key as BoundedName]
        expect(isOpen ? value > low : value >= low, `${name} ${value}`).toBe(true)
        expect(value <= high, `${name} ${value}`).toBe(true)
      }
    }
    expect(bounded).toBe(4 + 4 * 20 + 22 * 5 + 10 * 2)
  })
})

/** Figures that field checks and advice go by. */
const checked = [
  thresholds,
  adviceFigures,
  timingFigures,
  mostColdDegrees,
  ...Object.values(longCold),
  { searchDays, searchSpread, outdoorSpread },
  ...Object.values(malesBefore),
].flatMap((figures): readonly Threshold[] => Object.values(figures))

describe('sources', () => {
  test('each is used by a figure or by the words of a bee or crop', () => {
    const used = new Set<SourceKey>([
      ...all.flatMap(([, figure]) => sourcesOf(figure)),
      ...checked.flatMap(({ source }) => source),
      ...[...Object.values(bees), ...Object.values(crops)].flatMap(record => record.sources),
      ...Object.values(chillModelSources),
    ])
    expect((Object.keys(sources) as SourceKey[]).filter(key => !used.has(key))).toEqual([])
  })

  test('each says who, what and where', () => {
    for (const [key, source] of Object.entries(sources)) {
      for (const text of [source.authors, source.title, source.where]) expect(text.length, key).toBeGreaterThan(2)
      if (source.year !== null) expect(source.year, key).toBeGreaterThan(1900)
    }
  })
})

describe('tables are whole', () => {
  test('every name of a site or bee parameter has its figure, and none besides', () => {
    expect(Object.keys(siteParameters)).toEqual([...siteParameterNames])
    for (const id of beeIds) expect(Object.keys(bees[id].parameters)).toEqual([...beeParameterNames])
  })

  test('ids are their keys, in kebab-case; names are one to a crop', () => {
    for (const table of [crops, forages, bees]) {
      for (const [key, record] of Object.entries(table)) {
        expect(record.id).toBe(key)
        expect(key).toMatch(/^[a-z]+(-[a-z]+)*$/)
      }
    }
    const names = [...Object.values(crops), ...Object.values(forages)].map(record => record.name)
    expect(new Set(names).size).toBe(names.length)
  })

  test('no forage plant has the id of a crop', () => {
    expect(Object.keys(forages).filter(id => Object.hasOwn(crops, id))).toEqual([])
  })

  test('there are four bees, 22 crops and 10 forage plants, with bloom in every region', () => {
    expect([Object.keys(bees).length, Object.keys(crops).length, Object.keys(forages).length]).toEqual([4, 22, 10])
    for (const record of [...Object.values(crops), ...Object.values(forages)]) {
      expect(Object.keys(record.bloomOffset).sort()).toEqual([...bloomRegions].sort())
    }
  })
})
