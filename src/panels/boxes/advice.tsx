import { usualFemales } from '#geo/stocking/stock'
import { RulesTable } from '../coverage/rules-table'

/** Where books and growers disagree, told side by side. */
export function ClashingAdvice() {
  return (
    <div className="stack prose">
      <h3>Many small stations, or few large ones?</h3>
      <p>
        Trials found that bees stay and breed better at many small stations than at few large ones (Bosch 1994; Artz et
        al. 2013; Boyle and Pitts-Singer 2017), and a model put the best at about 200 tubes a place (Koh et al.).
        Against that: very small bundles without a roof are hard for bees to find, and every station is one more to put
        up, watch and clean. Common practice, without a source: 30 to 70 nesting females, 100 to 200 tubes, at a
        station. The default here is {usualFemales} nesting females.
      </p>
      <p>
        A starter of 10 to 12 cocoons is enough to begin a station, and it need not be full of tubes in its first year
        (common practice, no source).
      </p>
      <h3>A rate by area, or a number per tree?</h3>
      <RulesTable />
    </div>
  )
}
