import { dayAndMonth } from '../time/date-text'
import { beeParameterMeanings, beeParameterNames, bees } from './bees'
import { bloomErrors, bloomHeat } from './bloom-heat'
import { chillNeeds } from './chill-needs'
import { cropFigureNames, ownCropFigureNames } from './crop-record'
import { crops, forages } from './crops'
import { cultivarOffsets } from './cultivars'
import { sourcesOf } from './figure'
import { flyingModel } from './flying-model'
import { frostDays, frostKill } from './frost'
import { judgingFigures } from './judging-figures'
import { beeIds, bloomRegions } from './own'
import type { Basis, Parameter, Unit } from './parameter'
import { appleFullBloom, siteParameterNames, siteParameters } from './parameters'
import { coldDays, seasonWork } from './season-work'
import { cropName, type OwnValues, ownFiguresOf, ownNumber, ownOfBee, tableCropOf } from './settings'
import { sitingFigureNames, sitingFigures } from './siting-figures'
import { citation, type SourceKey } from './sources'
import { trackFigures } from './track-figures'

/** One number in use. */
export type ParameterRow = {
  /** Heading that the row stands under, and the id of what it belongs to: `site`, a bee, a crop, a forage plant, `bloom`, `work` … */
  readonly group: string
  readonly groupId: string
  readonly name: string
  readonly unit: Unit
  /** The number in use: the grower's own where there is one, else the table's. */
  readonly value: number
  readonly own: boolean
  /** The table's number; null where the tables have none. */
  readonly table: number | null
  /** The table's range; where the tables have no figure, the value itself. */
  readonly low: number
  readonly high: number
  readonly basis: Basis | 'own'
  /** Sources of the table's figure, in short and as keys of the bibliography. */
  readonly source: string
  readonly sources: readonly SourceKey[]
  readonly about: string
}

const none: OwnValues = { parameters: {}, crops: {} }

/** Every number in use, in the order: site, bees, crops, forage plants, bloom, the season's work, siting, what results are judged by, walked tracks. */
export function parameterRows(own: OwnValues = none): readonly ParameterRow[] {
  return [
    ...siteRows(own),
    ...beeIds.flatMap(id => beeRows(id, own)),
    ...cropRows(own),
    ...forageRows(),
    ...weatherRows(),
    ...bloomRows(own),
    ...Object.entries(seasonWork).map(([name, each]) => row(work, name, each)),
    ...beeIds.map(id => row(work, `coldDays ${id}`, coldDays[id])),
    ...sitingFigureNames.map(name => row(siting, name, sitingFigures[name])),
    ...Object.entries(judgingFigures).map(([name, each]) => row(judging, name, each)),
    ...Object.entries(trackFigures).map(([name, each]) => row(tracks, name, each)),
  ]
}

function siteRows(own: OwnValues): ParameterRow[] {
  const group = { group: 'Site', groupId: 'site' }
  return siteParameterNames.map(name => row(group, name, siteParameters[name], ownNumber(own.parameters, name)))
}

function beeRows(id: (typeof beeIds)[number], own: OwnValues): ParameterRow[] {
  const bee = bees[id]
  const group = { group: `${bee.name}, ${bee.latin}`, groupId: id }
  const values = ownOfBee(own.parameters, id)
  return beeParameterNames.map(name => {
    const parameter = bee.parameters[name]
    const about = `${beeParameterMeanings[name]}. ${parameter.about}`
    return row(group, name, { ...parameter, about }, ownNumber(values, name))
  })
}

function cropRows(own: OwnValues): ParameterRow[] {
  const ids = [...new Set([...Object.keys(crops), ...Object.keys(own.crops)])]
  return ids.flatMap(id => {
    const group = { group: cropName(id, own.crops), groupId: id }
    const values = ownFiguresOf(id, own.crops)
    const record = tableCropOf(id, own.crops)
    if (record === null) {
      return ownCropFigureNames.flatMap(name => ownRow(group, name, crops.apple!.figures[name].unit, values[name]))
    }
    const figures = cropFigureNames.map(name =>
      row(group, name, record.figures[name], isOwnFigure(name) ? values[name] : undefined),
    )
    const { flowers, femalesPerPlant, bloomDays, shareOfFlowersThatMustSet } = record
    return [
      ...figures,
      row(group, 'flowers', flowers),
      ...(femalesPerPlant ? [row(group, 'femalesPerPlant', femalesPerPlant)] : []),
      row(group, 'bloomDays', bloomDays),
      row(group, 'shareOfFlowersThatMustSet', shareOfFlowersThatMustSet),
    ]
  })
}

function forageRows(): ParameterRow[] {
  return Object.values(forages).flatMap(forage => {
    const group = { group: `Forage: ${forage.name}`, groupId: forage.id }
    const names = ['blossomDensity', 'appeal', 'firstToFull', 'fullToEnd', 'bloomDays'] as const
    return names.map(name => row(group, name, forage[name]))
  })
}

function weatherRows(): ParameterRow[] {
  const group = { group: 'Weather: flying time', groupId: 'weather' }
  return [
    ...Object.entries(flyingModel).map(([name, parameter]) => row(group, name, parameter)),
    ...heatRows(),
    ...frostRows(),
  ]
}

function heatRows(): ParameterRow[] {
  const heat = { group: 'Bloom: heat to full bloom', groupId: 'heat' }
  const cultivar = { group: 'Bloom: days from crop to cultivar', groupId: 'cultivar' }
  const chill = { group: 'Winter chill needed', groupId: 'chill' }
  return [
    ...Object.entries(bloomHeat).flatMap(([crop, { base, total, from }]) => [
      row(heat, `${crop} total from ${dayAndMonth(`2001-${from}`)}`, total),
      row(heat, `${crop} base`, base),
    ]),
    row(heat, 'error with a total of your own', bloomErrors.ownTotal),
    row(heat, 'error with a total from elsewhere', bloomErrors.tableTotal),
    ...Object.entries(cultivarOffsets).flatMap(([crop, offsets]) =>
      Object.entries(offsets).map(([name, parameter]) => row(cultivar, `${crop} ${name}`, parameter)),
    ),
    ...Object.entries(chillNeeds).map(([crop, need]) => row(chill, crop, need)),
  ]
}

function frostRows(): ParameterRow[] {
  const group = { group: 'Frost: temperatures that kill flowers', groupId: 'frost' }
  return [
    ...Object.entries(frostKill).flatMap(([crop, stages]) =>
      Object.values(stages).flatMap(({ name, tenth, most }) => [
        row(group, `${crop} ${name}, a tenth`, tenth),
        row(group, `${crop} ${name}, nine tenths`, most),
      ]),
    ),
    row(group, 'tight cluster, days before first bloom', frostDays.cluster),
    row(group, 'petals show, days before first bloom', frostDays.colour),
    row(group, 'young fruit as tender, days after petal fall', frostDays.after),
  ]
}

/** Where default bloom dates come from: apple full bloom, then the days from it, each by region. */
function bloomRows(own: OwnValues): ParameterRow[] {
  const apple = { group: 'Bloom: day of apple full bloom', groupId: 'bloom' }
  const offset = { group: 'Bloom: days from apple full bloom', groupId: 'bloom' }
  const plants = [
    ...Object.keys({ ...crops, ...own.crops }).map(id => ({ id, record: tableCropOf(id, own.crops) })),
    ...Object.values(forages).map(record => ({ id: record.id, record })),
  ]
  return [
    ...bloomRegions.map(region => row(apple, region, appleFullBloom[region])),
    ...plants.flatMap(({ id, record }) =>
      record === null ? [] : bloomRegions.map(region => row(offset, `${id} ${region}`, record.bloomOffset[region])),
    ),
  ]
}

const work = { group: 'Work of the season', groupId: 'work' }
const siting = { group: 'New places and stock', groupId: 'siting' }
const judging = { group: 'What counts as enough, or as a change', groupId: 'judging' }
const tracks = { group: 'Walked tracks: pauses, spikes, rows', groupId: 'tracks' }

type Group = Pick<ParameterRow, 'group' | 'groupId'>
type OwnFigureName = (typeof ownCropFigureNames)[number]

const isOwnFigure = (name: string): name is OwnFigureName => (ownCropFigureNames as readonly string[]).includes(name)

function row(group: Group, name: string, parameter: Parameter, own?: number): ParameterRow {
  const { unit, value, low, high, basis, about } = parameter
  const sources = sourcesOf(parameter)
  const source = sources.map(citation).join('; ')
  const isOwn = own !== undefined
  const used = { value: own ?? value, own: isOwn, basis: isOwn ? ('own' as const) : basis }
  return { ...group, name, unit, ...used, table: value, low, high, source, sources, about }
}

/** A figure that only the grower has; no row where it is missing. */
function ownRow(group: Group, name: string, unit: Unit, value: number | undefined): ParameterRow[] {
  if (value === undefined) return []
  const about = 'A value of this plan; the tables have none.'
  return [
    {
      ...group,
      name,
      unit,
      value,
      own: true,
      table: null,
      low: value,
      high: value,
      basis: 'own',
      source: '',
      sources: [],
      about,
    },
  ]
}
