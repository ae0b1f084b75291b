import type { Wording } from './wording'

/** Sentences for tables of daily weather that are being read; `line` counts the rows of the table from 1. */
export const weatherTableWording = {
  'weather-table-no-dates': () =>
    'No column of the table holds dates, such as 2026-03-01, 1.3.2026 or 03/01/2026. One line a day is needed, with its date.',
  'weather-table-large': v =>
    `The table is larger than ${v.most} days of weather could be. Nothing of it was read; cut it to the years that are needed.`,
  'weather-table-empty': () =>
    'No day could be read from the table. Check which column holds the date, and the order of day and month.',
  'weather-table-missing': v =>
    `${v.days === 1 ? '1 day is' : `${v.days} days are`} missing between ${v.first} and ${v.last}. They stay unknown.`,
  'weather-row-date': v => `Row ${v.line}: “${v.found}” is no date that can be read. The row is left out.`,
  'weather-row-repeated': v => `Row ${v.line}: ${v.date} is there already. The first is kept, this row is left out.`,
  'weather-row-number': v => `Row ${v.line}, ${v.date}: the ${v.label} “${v.found}” is no number. It stays unknown.`,
  'weather-row-range': v =>
    `Row ${v.line}, ${v.date}: the ${v.label} “${v.found}” should be ${v.allowed}. It stays unknown; check the unit of the column.`,
  'weather-row-order': v =>
    `Row ${v.line}, ${v.date}: the lowest temperature, ${v.low} °C, is above the highest, ${v.high} °C. Both are kept but not used; check whether the columns are swapped.`,
} as const satisfies Record<string, Wording>
