import type { Unit } from '#geo/data/parameter'
import type { Units } from '#geo/plan/plan'
import { acre, foot, hectare, inch, mile, mileAnHour } from '#geo/space/units'
import { plainDigits, significant } from '#geo/wording/plain'
import { grouped } from './words'

/** How a quantity is shown and typed: the file and the engine are always metric. */
export type Measure = {
  /** Written behind the figure; empty for a bare count. */
  readonly unit: string
  /** The same for a screen reader. */
  readonly spoken: string
  readonly toShown: (stored: number) => number
  readonly toStored: (shown: number) => number
  /** Significant digits that a stored value is shown with in a field. */
  readonly digits: number
}

export type Quantity =
  | 'length'
  | 'bore'
  | 'area'
  | 'perArea'
  | 'perSquare'
  | 'perLength'
  | 'temperature'
  | 'heat'
  | 'wind'
  | 'share'
  | 'days'
  | 'hours'
  | 'seconds'
  | 'degrees'
  | 'plain'
  | 'year'

const scaled = (unit: string, spoken: string, factor: number, digits = 4): Measure => ({
  unit,
  spoken,
  toShown: stored => stored / factor,
  toStored: shown => shown * factor,
  digits,
})

const same = (unit: string, spoken: string): Measure => scaled(unit, spoken, 1, 12)

const anywhere = {
  share: { ...scaled('%', 'percent', 0.01, 6) },
  days: same('days', 'days'),
  hours: same('h', 'hours'),
  seconds: same('s', 'seconds'),
  degrees: same('°', 'degrees'),
  plain: same('', ''),
  year: same('', ''),
}

const metric: Readonly<Record<Quantity, Measure>> = {
  ...anywhere,
  length: same('m', 'metres'),
  bore: same('mm', 'millimetres'),
  area: scaled('ha', 'hectares', hectare),
  perArea: same('per ha', 'per hectare'),
  perSquare: same('per m²', 'per square metre'),
  perLength: same('per m', 'per metre'),
  temperature: same('°C', 'degrees Celsius'),
  heat: same('°C d', 'degree-days Celsius'),
  wind: same('m/s', 'metres per second'),
}

const american: Readonly<Record<Quantity, Measure>> = {
  ...anywhere,
  length: scaled('ft', 'feet', foot),
  bore: scaled('in', 'inches', inch),
  area: scaled('acres', 'acres', acre),
  perArea: scaled('per acre', 'per acre', hectare / acre),
  perSquare: scaled('per sq ft', 'per square foot', 1 / (foot * foot)),
  perLength: scaled('per ft', 'per foot', 1 / foot),
  temperature: {
    unit: '°F',
    spoken: 'degrees Fahrenheit',
    toShown: celsius => celsius * 1.8 + 32,
    toStored: fahrenheit => (fahrenheit - 32) / 1.8,
    digits: 4,
  },
  heat: scaled('°F d', 'degree-days Fahrenheit', 1 / 1.8),
  wind: scaled('mph', 'miles per hour', mileAnHour),
}

export function measureOf(quantity: Quantity, units: Units): Measure {
  return (units === 'us' ? american : metric)[quantity]
}

/** The quantity of a table's unit. */
export function quantityOf(unit: Unit): Quantity {
  switch (unit) {
    case 'm':
      return 'length'
    case 'mm':
      return 'bore'
    case 'd':
      return 'days'
    case 'h':
      return 'hours'
    case 's':
      return 'seconds'
    case 'degC':
      return 'temperature'
    case 'degC d':
      return 'heat'
    case 'm/s':
      return 'wind'
    case 'share':
      return 'share'
    case 'females/ha':
      return 'perArea'
    case 'flowers/m2':
      return 'perSquare'
    case 'flowers/m':
      return 'perLength'
    case '1':
    case 'females/plant':
    case 'flowers/plant':
    case 'cells':
    case 'tubes':
    case 'portions':
    case 'females':
    case 'money':
      return 'plain'
    default:
      return unit satisfies never
  }
}

/** Stored figure as it stands in a field: no grouping, no unit, no digits that came from converting. */
export function fieldText(stored: number, measure: Measure): string {
  return plainDigits(significant(measure.toShown(stored), measure.digits))
}

/** Figure with its unit, to `digits` significant figures: "4.5 m", "618 per ha", "90%". */
export function withUnit(stored: number, quantity: Quantity, units: Units, digits = 3): string {
  const measure = measureOf(quantity, units)
  const figure = quantity === 'year' ? String(stored) : grouped(significant(measure.toShown(stored), digits))
  if (measure.unit === '') return figure
  return measure.unit === '%' || measure.unit === '°' ? `${figure}${measure.unit}` : `${figure} ${measure.unit}`
}

/** A length on the ground: whole metres or feet from 20 on, one decimal below. */
export function lengthText(metres: number, units: Units): string {
  const { unit, toShown } = measureOf('length', units)
  const shown = toShown(metres)
  return `${grouped(Math.abs(shown) < 20 ? Math.round(shown * 10) / 10 : Math.round(shown))} ${unit}`
}

/** A way farther than a farm: whole kilometres or miles. */
export function farText(metres: number, units: Units): string {
  return units === 'us' ? `${grouped(Math.round(metres / mile))} miles` : `${grouped(Math.round(metres / 1000))} km`
}

/** An area: small ones in m² or sq ft, large ones in ha or acres, three figures. */
export function areaText(squareMetres: number, units: Units): string {
  if (units === 'us') {
    const acres = squareMetres / acre
    if (acres < 0.1) return `${grouped(significant(squareMetres / (foot * foot), 3))} sq ft`
    return `${grouped(significant(acres, 3))} ${acres === 1 ? 'acre' : 'acres'}`
  }
  if (squareMetres < 1000) return `${grouped(significant(squareMetres, 3))} m²`
  return `${grouped(significant(squareMetres / hectare, 3))} ha`
}

/** A bore or depth: "8 mm", or inches to the nearest 32nd with the millimetres beside: "5/16 in (8 mm)". */
export function boreText(millimetres: number, units: Units): string {
  const shown = `${grouped(significant(millimetres, 3))} mm`
  return units === 'us' ? `${inchText(millimetres)} in (${shown})` : shown
}

/** Inches as a whole number and a fraction of 32nds at the finest: "5/16", "5 7/8". */
export function inchText(millimetres: number): string {
  const parts = Math.round((millimetres / inch) * 32)
  const wholes = Math.floor(parts / 32)
  let above = parts % 32
  let below = 32
  while (above > 0 && above % 2 === 0) {
    above /= 2
    below /= 2
  }
  if (above === 0) return String(wholes)
  return wholes === 0 ? `${above}/${below}` : `${wholes} ${above}/${below}`
}
