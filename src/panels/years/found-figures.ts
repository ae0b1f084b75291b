import type { StationYear } from '#geo/seasons/record'
import type { Spread } from '#geo/seasons/spread'
import type { OrchardYear } from '#geo/seasons/year'
import { significant } from '#geo/wording/plain'
import type { FoundFigure } from '../../state/store'
import { about, counted, grouped, honest, percent, rangeText } from '../../text/words'
import { causeName } from './losses'
import { harvestText } from './year-words'

export type FoundLine = { readonly figure: FoundFigure; readonly label: string; readonly text: string }

/** "about 70 (46 to 104)"; what was counted is still an estimate of bees. */
export function spreadText({ low, mid, high }: Spread): string {
  return `${about(mid)} (${rangeText(low, high, honest)})`
}

export function shareSpreadText({ low, mid, high }: Spread): string {
  return `about ${percent(mid)} (${rangeText(low, high, percent)})`
}

export function returnText(value: number): string {
  return grouped(significant(value, value < 10 ? 2 : 3))
}

export const notCounted = 'not counted'

function oneDecimal(value: number): string {
  return grouped(Number(value.toFixed(1)))
}

/** The figures of one station's season; what was not counted says so. */
export function stationLines(found: StationYear): readonly FoundLine[] {
  const { nested, establishment, cellsPerTube, femaleShare, lossShare, daughters, sons } = found
  return [
    { figure: 'nested', label: 'Females that nested', text: nested ? spreadText(nested) : notCounted },
    {
      figure: 'nestedShare',
      label: 'Of those set out',
      text: establishment ? shareSpreadText(establishment) : found.released.females > 0 ? notCounted : 'none set out',
    },
    {
      figure: 'cellsPerTube',
      label: 'Cells in a tube',
      text: cellsPerTube === null ? notCounted : oneDecimal(cellsPerTube),
    },
    {
      figure: 'daughterShare',
      label: 'Females among cocoons',
      text: femaleShare === null ? notCounted : percent(femaleShare),
    },
    { figure: 'lost', label: 'Cells lost', text: lossShare === null ? notCounted : lossText(lossShare) },
    {
      figure: 'harvest',
      label: 'Healthy cocoons',
      text: daughters && sons ? `${harvestText(daughters)} females, ${harvestText(sons)} males` : notCounted,
    },
    {
      figure: 'return',
      label: 'Daughters for each female set out',
      text: found.return === null ? notCounted : returnText(found.return),
    },
  ]
}

function lossText({ share, low, high }: NonNullable<StationYear['lossShare']>): string {
  const isSure = low === high || low === null || high === null
  return isSure ? percent(share) : `${percent(share)} (${rangeText(low, high, percent)})`
}

/** The same for all stations together, with what is left after the share-out. */
export function orchardLines(found: OrchardYear): readonly FoundLine[] {
  const { nested, establishment, cellsPerTube, femaleShare, lossShare, daughters, sons, givenAway, stockLeft } = found
  const left =
    stockLeft !== null && givenAway !== null
      ? `${counted(Math.round(stockLeft), 'cocoon')}${givenAway > 0 ? `, ${grouped(givenAway)} given away` : ''}`
      : daughters === null || sons === null
        ? notCounted
        : 'the share-out does not add up'
  return [
    { figure: 'nested', label: 'Females that nested', text: nested ? spreadText(nested) : notCounted },
    {
      figure: 'nestedShare',
      label: 'Of those set out',
      text: establishment ? shareSpreadText(establishment) : notCounted,
    },
    {
      figure: 'cellsPerTube',
      label: 'Cells in a tube',
      text: cellsPerTube === null ? notCounted : oneDecimal(cellsPerTube),
    },
    {
      figure: 'daughterShare',
      label: 'Females among cocoons',
      text: femaleShare === null ? notCounted : percent(femaleShare),
    },
    { figure: 'lost', label: 'Cells lost', text: lossShare === null ? notCounted : percent(lossShare) },
    {
      figure: 'harvest',
      label: 'Healthy cocoons',
      text:
        daughters !== null && sons !== null
          ? `${grouped(Math.round(daughters))} females, ${grouped(Math.round(sons))} males`
          : notCounted,
    },
    {
      figure: 'return',
      label: 'Daughters for each female set out',
      text: found.return === null ? notCounted : returnText(found.return),
    },
    { figure: 'stockLeft', label: 'Stock after the share-out', text: left },
  ]
}

/** Causes with their cells, most first: "12 Pollen mites" each. */
export function causeLines(
  losses: Readonly<Record<string, number>>,
): readonly { readonly cause: string; readonly cells: number }[] {
  return Object.entries(losses)
    .map(([cause, cells]) => ({ cause: causeName(cause), cells }))
    .filter(({ cells }) => cells > 0)
    .toSorted((a, b) => b.cells - a.cells)
}
