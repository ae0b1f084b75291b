import { describe, expect, it } from 'vitest'
import { readRowTable } from '#geo/file/row-table'
import type { TableGround } from '#geo/file/table-places'
import { guessTable } from '#geo/file/tree-columns'
import { readStationTable, readTreeTable } from '#geo/file/tree-table'
import { type LngLat, planeAt } from '#geo/space/plane'

const ground: TableGround = { origin: [-1.7, 52.2], bearing: 90, rowSpacing: 4 }
const plane = planeAt(ground.origin)

function guess(text: string) {
  const outcome = guessTable(text)
  if (!outcome.ok) throw new Error('no guess')
  return outcome.value
}

/** Lines in metres from the ground's origin, to the centimetre, and what is said of them. */
function rows(text: string, given?: TableGround) {
  const { of, columns } = guess(text)
  expect(of).toBe('rows')
  const outcome = readRowTable(text, columns, given === undefined ? {} : { ground: given })
  const items = outcome.ok ? outcome.value.items : []
  return {
    lines: items
      .filter(({ geometry }) => geometry.type === 'LineString')
      .map(({ geometry }) =>
        (geometry.coordinates as readonly LngLat[]).map(at => {
          const { x, y } = plane.toMetres(at)
          return [Math.round(100 * x) / 100 + 0, Math.round(100 * y) / 100 + 0]
        }),
      ),
    said: items.map(({ properties }) => properties),
    told: outcome.problems.map(({ code, values }) => [code, values.row]),
  }
}

describe('a table of rows', () => {
  it('from start to end in degrees, with all that is said of them', () => {
    const text =
      'row name,start longitude,start latitude,end longitude,end latitude,spacing (ft),count,crop,cultivar,year\nA,-1.7,52.2,-1.699,52.2,10,12,apple,Cox,2015\n'
    const { said, lines, told } = rows(text)
    expect(told).toEqual([])
    expect(said).toEqual([{ name: 'A', cultivar: 'Cox', spacing: 3.048, count: 12, planted: 2015 }])
    // A thousandth of a degree of longitude at 52.2 N is 68.36 m (Snyder 1987).
    expect(lines[0]![1]![0]).toBeCloseTo(68.36, 1)
  })

  it('from a start along a bearing, for a length or so many plants', () => {
    const text =
      'row,longitude,latitude,bearing,length,spacing,count\n1,-1.7,52.2,180,50,2,26\n2,-1.7,52.2,270,,2.5,11\n3,-1.7,52.2,,50,2,\n4,-1.7,52.2,0,,2,\n'
    const { lines, said, told } = rows(text)
    expect(lines).toEqual([
      [
        [0, 0],
        [0, -50],
      ],
      [
        [0, 0],
        // A centimetre past the last plant.
        [-25.01, 0],
      ],
    ])
    // What follows from length and spacing is not said twice.
    expect(said).toEqual([
      { name: 'Row 1', spacing: 2 },
      { name: 'Row 2', spacing: 2.5 },
    ])
    expect(told).toEqual([
      ['import-row-blank', 4],
      ['import-row-blank', 5],
    ])
  })

  it('by x and y from one place, y along its bearing', () => {
    const text = 'name;x1;y1;x2;y2\nA;0;0;0;30\nB;4,5;0;4,5;30\n'
    expect(rows(text, ground).lines).toEqual([
      [
        [0, 0],
        [30, 0],
      ],
      [
        [0, -4.5],
        [30, -4.5],
      ],
    ])
    // Coordinates of a survey are counted from those of the place.
    const survey = 'name,x1,y1,x2,y2\nA,451000,268000,451000,268030\nB,9000000,0,0,0\n'
    const { lines, told } = rows(survey, { ...ground, zero: { x: 451000, y: 268000 } })
    expect(lines).toEqual([
      [
        [0, 0],
        [30, 0],
      ],
    ])
    expect(told).toEqual([['import-row-figure', 3]])
    expect(rows(text).told).toEqual([['import-table-no-places', undefined]])
  })

  it('side by side by their numbers, or as they follow each other', () => {
    const text = 'row,number of plants,spacing\n1,11,3\n4,11,3\n'
    expect(rows(text, ground).lines.map(([from]) => from)).toEqual([
      [0, 0],
      [0, -12],
    ])
    expect(rows(text.replace('row,', 'name,').replace('4,', 'Last,'), ground).lines.map(([from]) => from)).toEqual([
      [0, 0],
      [0, -4],
    ])
  })

  it('by geometry; what is none is told and left out', () => {
    const text =
      'kind,name,crop,WKT\nbed,Low,strawberry,"POLYGON ((-1.7 52.2, -1.699 52.2, -1.699 52.201, -1.7 52.2))"\nrow,Bad,apple,LINE (1 2)\nrow,=1+1,apple,"LINESTRING (-1.7 52.2, -1.7 52.201)"\n'
    const { said, told } = rows(text)
    expect(said.map(({ name }) => name)).toEqual(['Low', '=1+1'])
    expect(told).toEqual([['import-row-shape', 3]])
  })
})

describe('places of a table', () => {
  it('x and y are degrees where they look like it, else metres', () => {
    const of = (text: string) => guess(text).columns.places
    expect(of('X,Y,name\n-1.70001,52.20001,a\n-1.70002,52.20003,b\n')).toBe('degrees')
    expect(of('x,y,name\n10.5,52.2,a\n11,53,b\n')).toBe('metres')
    expect(of('east;north;name\n451000,1234;268000,1234;a\n')).toBe('metres')
    expect(of('row,tree\n1,1\n')).toBe('numbers')
  })

  it('trees and stations by x and y in feet', () => {
    const text = 'x (ft),y (ft),row,tree,cultivar\n0,10,1,1,Cox\n0,20,1,2,Cox\n'
    const { columns } = guess(text)
    const outcome = readTreeTable(text, columns, { ground })
    const [first] = outcome.ok ? outcome.value.items : []
    expect(plane.toMetres(first!.geometry.coordinates as LngLat).x).toBeCloseTo(3.048, 3)
    expect(first!.inRow).toEqual({ row: '1', tree: 1 })
    const nests = 'station,x,y\nA,1,2\n'
    expect(guess(nests).of).toBe('stations')
    expect(readStationTable(nests, guess(nests).columns, { ground }).ok).toBe(true)
  })
})
