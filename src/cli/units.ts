import type { Unit } from '#geo/data/parameter'
import type { Units } from '#geo/plan/plan'
import { acre, foot, hectare, inch, mileAnHour } from '#geo/space/units'
import { significant } from '#geo/wording/plain'
import { grouped } from './words'

/** An area in the grower's units: small ones in m² or sq ft, large ones in ha or acres. */
export function areaText(squareMetres: number, units: Units): string {
  const [small, large] =
    units === 'us'
      ? ([
          [foot * foot, 'sq ft'],
          [acre, 'acres'],
        ] as const)
      : ([
          [1, 'm²'],
          [hectare, 'ha'],
        ] as const)
  const [size, name] = squareMetres < large[0] / 10 ? small : large
  return `${grouped(significant(squareMetres / size, 3))} ${name}`
}

type Shown = { readonly unit: string; readonly of: (value: number) => number }

const american: Partial<Record<Unit, Shown>> = {
  m: { unit: 'ft', of: metres => metres / foot },
  mm: { unit: 'in', of: millimetres => millimetres / inch },
  degC: { unit: '°F', of: celsius => celsius * 1.8 + 32 },
  'degC d': { unit: '°F d', of: celsius => celsius * 1.8 },
  'm/s': { unit: 'mph', of: speed => speed / mileAnHour },
  'females/ha': { unit: 'females/acre', of: females => (females * acre) / hectare },
  'flowers/m2': { unit: 'flowers/sq ft', of: flowers => flowers * foot * foot },
  'flowers/m': { unit: 'flowers/ft', of: flowers => flowers * foot },
}

const metric: Partial<Record<Unit, Shown>> = {
  d: { unit: 'days', of: same },
  degC: { unit: '°C', of: same },
  'degC d': { unit: '°C d', of: same },
  share: { unit: '%', of: share => share * 100 },
  'flowers/m2': { unit: 'flowers/m²', of: same },
  '1': { unit: '', of: same },
}

function same(value: number): number {
  return value
}

/** How figures of a table's unit are shown: the unit's name, and the figure to four significant digits. */
export function shownUnit(unit: Unit, units: Units): { readonly unit: string; text(value: number): string } {
  const shown = (units === 'us' ? american[unit] : undefined) ?? metric[unit] ?? { unit, of: same }
  return { unit: shown.unit, text: value => grouped(significant(shown.of(value), 4)) }
}
