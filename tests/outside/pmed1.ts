/** Lengths of the roads from place 1 to 2, 2 to 3, …, 100 to 1. */
const ring = `
30 46 1 28 31 69 39 14 84 59 10 28 63 9 100 98 70 94 22 14 87 82 55 2 32 77 95 29 59 91 89 50 40 88 94 60 21 89 47
63 45 46 24 77 60 45 50 93 22 84 16 85 68 93 37 26 29 38 10 32 67 66 52 19 39 12 86 72 73 65 2 8 96 43 39 61 90 8 58
91 58 13 79 59 28 46 24 63 81 14 52 64 75 71 51 75 57 31 49 88`

/** The other roads: two places and a length. */
const across = `
80 5 90, 85 69 51, 20 19 30, 85 13 22, 81 95 54, 58 73 37, 64 51 89, 39 76 89, 13 8 77, 91 76 51, 52 95 96, 91 75
33, 80 91 84, 35 80 46, 54 86 35, 30 70 5, 19 7 9, 74 53 50, 11 37 4, 19 92 70, 62 94 96, 60 52 34, 24 59 63, 42 45
68, 19 60 53, 60 27 86, 15 50 31, 38 18 27, 81 30 99, 1 29 6, 22 52 11, 54 59 75, 5 7 8, 41 44 80, 41 76 42, 44 12
56, 61 65 73, 20 93 35, 9 99 28, 45 68 19, 16 79 96, 13 42 3, 68 4 28, 58 17 60, 21 81 34, 35 7 7, 21 14 82, 26 32
26, 6 63 83, 31 69 53, 91 78 32, 45 59 33, 42 57 5, 8 53 66, 65 94 61, 94 90 63, 73 33 88, 39 21 59, 42 85 34, 30 57
37, 34 94 52, 62 38 56, 26 29 20, 48 98 53, 4 33 45, 31 63 82, 8 52 31, 37 81 14, 50 27 16, 27 14 48, 88 33 8, 56 30
76, 87 91 17, 33 49 77, 70 30 74, 25 99 19, 95 30 96, 14 85 90, 49 8 96, 96 5 87, 73 4 41, 99 32 35, 95 1 31, 99 3
49, 18 75 100, 58 47 68, 35 60 5, 38 16 70, 54 40 52, 95 55 47, 54 17 45, 9 83 75, 97 66 81, 9 48 92, 90 95 96, 4 27
27, 75 22 48, 62 7 55, 79 3 57, 15 69 46`

function roads(): (readonly [from: number, to: number, length: number])[] {
  const lengths = ring.trim().split(/\s+/).map(Number)
  return [
    ...lengths.map((length, i) => [i, (i + 1) % 100, length] as const),
    ...across.split(',').map(road => {
      const [from, to, length] = road.trim().split(/\s+/).map(Number)
      return [from! - 1, to! - 1, length!] as const
    }),
  ]
}

/**
 * A published instance of the p-median problem: 100 places, 200 roads between them, five places to be chosen so that the
 * sum of the ways from all places to the nearest of them is least. Of a road that is named twice the last length holds.
 * Source: pmed1 of J. E. Beasley's OR-Library (A note on solving large p-median problems, European Journal of
 * Operational Research 21, 1985, 270-273).
 */
export const pmed1 = { places: 100, chosen: 5, roads: roads() }
