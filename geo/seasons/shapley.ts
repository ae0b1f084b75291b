/**
 * Shapley values of `count` players: each one's gain from joining, averaged over all orders in which they might join.
 * The parts add up to value(all) - value(none), and no order of joining is before another. `value` is asked once for
 * each set of players, given as bits.
 * Source: Shapley 1953, A value for n-person games.
 */
export function shapleyValues(count: number, value: (players: number) => number): number[] {
  const sets = 2 ** count
  const values = Array.from({ length: sets }, (_, players) => value(players))
  return Array.from({ length: count }, (_, player) => {
    const bit = 1 << player
    let sum = 0
    for (let players = 0; players < sets; players += 1) {
      if ((players & bit) !== 0) continue
      sum += weightOf(sizeOf(players), count) * (values[players | bit]! - values[players]!)
    }
    return sum
  })
}

/** Share of all orders in which just these `size` of `count` players stand before a given one: size! (count - size - 1)! / count!. */
function weightOf(size: number, count: number): number {
  let orders = count
  for (let i = 1; i <= size; i += 1) orders *= (count - i) / i
  return 1 / orders
}

function sizeOf(players: number): number {
  let size = 0
  for (let rest = players; rest > 0; rest >>= 1) size += rest & 1
  return size
}
