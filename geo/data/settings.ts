import { type BeeParameterName, beeParameterNames, bees } from './bees'
import type { CropFigureName, CropRecord } from './crop-record'
import { cropFigureNames, ownCropFigureNames } from './crop-record'
import { crops, forages } from './crops'
import type { BeeId, BloomRegion, OwnCrop, OwnParameters } from './own'
import { beeIds, bloomRegions } from './own'
import type { Parameter } from './parameter'
import { appleFullBloom, type SiteParameterName, siteParameterNames, siteParameters } from './parameters'

export type SiteSettings = Readonly<Record<SiteParameterName, number>>
export type BeeSettings = Readonly<Record<BeeParameterName, number>>

/** Days from apple full bloom to a crop's own, by region. */
export type BloomOffset = Readonly<
  Record<BloomRegion, { readonly low: number; readonly mid: number; readonly high: number }>
>

export type CropSettings = Readonly<Record<CropFigureName, number>> & {
  readonly id: string
  readonly name: string
  readonly botanicalName: string
  readonly kind: string
  /** Rule of thumb beside the rate per hectare; null where there is none. */
  readonly femalesPerPlant: { readonly low: number; readonly value: number; readonly high: number } | null
  /** null for a crop of the grower's own that is based on none of the tables. */
  readonly bloomOffset: BloomOffset | null
}

/** Every number that the model takes, plain. Units are those of the tables. */
export type Settings = {
  readonly site: SiteSettings
  readonly bees: Readonly<Record<BeeId, BeeSettings>>
  readonly crops: Readonly<Record<string, CropSettings>>
}

/** The part of a plan that holds the grower's own values. */
export type OwnValues = { readonly parameters: OwnParameters; readonly crops: Readonly<Record<string, OwnCrop>> }

/** Which end of its range a figure is taken to, by `site.<name>`, `bee.<name>` (all species), `crop.<name>` (all crops). */
export type Vary = Readonly<Record<string, 'low' | 'high'>>

/** Figures that `vary` knows, in the order of the tables. */
export const varyKeys: readonly string[] = [
  ...siteParameterNames.map(name => `site.${name}`),
  ...beeParameterNames.map(name => `bee.${name}`),
  ...cropFigureNames.map(name => `crop.${name}`),
]

/**
 * The tables with the grower's own values over them. `vary` takes table values, never own ones, to the low or high end.
 * Own parameters of unknown names are passed over; an own crop that lacks a figure is left out.
 */
export function settingsFor(own: OwnValues, vary: Vary = {}): Settings {
  const unknown = Object.keys(vary).find(key => !varyKeys.includes(key))
  if (unknown !== undefined) throw new RangeError(`no figure to vary: ${unknown}`)
  return {
    site: siteSettings(own.parameters, vary),
    bees: beeSettings(own.parameters, vary),
    crops: cropSettings(own, vary),
  }
}

function siteSettings(own: OwnParameters, vary: Vary): SiteSettings {
  return mapNames(siteParameterNames, name => ownNumber(own, name) ?? pick(siteParameters[name], vary[`site.${name}`]))
}

function beeSettings(own: OwnParameters, vary: Vary): Settings['bees'] {
  return mapNames(beeIds, id => {
    const values = ownOfBee(own, id)
    return mapNames(
      beeParameterNames,
      name => ownNumber(values, name) ?? pick(bees[id].parameters[name], vary[`bee.${name}`]),
    )
  })
}

function cropSettings(own: OwnValues, vary: Vary): Settings['crops'] {
  const ids = new Set([...Object.keys(crops), ...Object.keys(own.crops)])
  const all = [...ids].map(id => cropSetting(id, own.crops, vary))
  return Object.fromEntries(all.filter(crop => crop !== null).map(crop => [crop.id, crop]))
}

function cropSetting(id: string, own: OwnValues['crops'], vary: Vary): CropSettings | null {
  const values = ownFiguresOf(id, own)
  const record = tableCropOf(id, own)
  const missing = ownCropFigureNames.some(name => values[name] === undefined)
  if (record === null) return missing ? null : { ...unbased, ...(values as OwnFigures), id, name: own[id]?.name || id }
  const table = mapNames(cropFigureNames, name => pick(record.figures[name], vary[`crop.${name}`]))
  const { botanicalName, kind, femalesPerPlant } = record
  return {
    ...table,
    ...values,
    id,
    name: cropName(id, own),
    botanicalName,
    kind,
    femalesPerPlant: femalesPerPlant && spreadOf(femalesPerPlant),
    bloomOffset: offsetOf(record.bloomOffset),
  }
}

type OwnFigures = Readonly<Record<(typeof ownCropFigureNames)[number], number>>

/** What a crop that stands on no table has besides its own five figures; its bloom lengths are those of apple. */
const unbased = {
  botanicalName: '',
  kind: 'other',
  femalesPerPlant: null,
  bloomOffset: null,
  firstToFull: pick(crops.apple!.figures.firstToFull, undefined),
  fullToEnd: pick(crops.apple!.figures.fullToEnd, undefined),
}

/** The name the grower gave the crop, else the table's, else its id. */
export function cropName(id: string, own: OwnValues['crops']): string {
  return (Object.hasOwn(own, id) && own[id]!.name) || (Object.hasOwn(crops, id) ? crops[id]!.name : id)
}

/**
 * The ids a crop's figures come from, itself first, then what it is based on. An own crop may stand on another own crop;
 * a circle ends where it closes.
 */
function basesOf(id: string, own: OwnValues['crops']): readonly string[] {
  const chain: string[] = []
  for (let next: string | undefined = id; next !== undefined && !chain.includes(next); ) {
    chain.push(next)
    next = Object.hasOwn(own, next) ? own[next]!.basedOn : undefined
  }
  return chain
}

/** The grower's own figures that hold for a crop: its own, else those of the own crops it is based on. */
export function ownFiguresOf(id: string, own: OwnValues['crops']): Partial<OwnFigures> {
  const figures: Partial<Record<keyof OwnFigures, number>> = {}
  for (const base of basesOf(id, own)) {
    if (!Object.hasOwn(own, base)) continue
    for (const name of ownCropFigureNames) {
      const value = own[base]![name]
      if (figures[name] === undefined && value !== undefined) figures[name] = value
    }
  }
  return figures
}

/** The crop of the tables that a crop stands on: the last of its bases that the tables know; null where there is none. */
export function tableCropOf(id: string, own: OwnValues['crops']): CropRecord | null {
  const base = basesOf(id, own).findLast(each => Object.hasOwn(crops, each))
  return base === undefined ? null : crops[base]!
}

/** The grower's own values for a species; empty where there are none. */
export function ownOfBee(own: OwnParameters, id: BeeId): Readonly<Record<string, number>> {
  const values = Object.hasOwn(own, id) ? own[id] : undefined
  return typeof values === 'object' ? values : {}
}

/** A value of the grower's own, where it is there and a number. */
export function ownNumber(own: OwnParameters, name: string): number | undefined {
  const value = Object.hasOwn(own, name) ? own[name] : undefined
  return typeof value === 'number' ? value : undefined
}

/** Day of the year of apple full bloom, by region: what the offsets of crops and forage plants count from. */
export const appleFullBloomDay: BloomOffset = offsetOf(appleFullBloom)

/** A forage plant's figures, plain. */
export type ForageSettings = {
  readonly id: string
  readonly name: string
  readonly botanicalName: string
  readonly blossomDensity: number
  readonly appeal: number
  readonly bloomOffset: BloomOffset
  readonly firstToFull: number
  readonly fullToEnd: number
}

/** The forage plants of the table: a start for drawing one, which the grower then changes on the plan itself. */
export const forageSettings: Readonly<Record<string, ForageSettings>> = Object.fromEntries(
  Object.values(forages).map(({ id, name, botanicalName, bloomOffset, ...figures }) => [
    id,
    {
      id,
      name,
      botanicalName,
      blossomDensity: figures.blossomDensity.value,
      appeal: figures.appeal.value,
      bloomOffset: offsetOf(bloomOffset),
      firstToFull: figures.firstToFull.value,
      fullToEnd: figures.fullToEnd.value,
    },
  ]),
)

function pick(parameter: Parameter, end: 'low' | 'high' | undefined): number {
  return parameter[end ?? 'value']
}

function spreadOf({ low, value, high }: Parameter) {
  return { low, value, high }
}

function offsetOf(offset: Readonly<Record<BloomRegion, Parameter>>): BloomOffset {
  return mapNames(bloomRegions, region => {
    const { low, value, high } = offset[region]
    return { low, mid: value, high }
  })
}

function mapNames<Name extends string, T>(names: readonly Name[], of: (name: Name) => T): Readonly<Record<Name, T>> {
  return Object.fromEntries(names.map(name => [name, of(name)])) as Record<Name, T>
}
