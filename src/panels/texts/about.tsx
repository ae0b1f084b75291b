/** What the planner does with what is drawn and typed, in the order of the work. */
export function About() {
  return (
    <div className="stack prose">
      <p>
        You draw what grows, say when it blooms, set up nest stations and plan when cocoons go out. The planner then
        works out where the nesting females spend their days, and compares that with the females each planting asks for.
      </p>
      <h3>Wanted</h3>
      <p>
        Every row, block and bed is broken into single plants or small squares. Each asks for a number of nesting
        females: its ground times the crop’s stocking rate, or a number per plant where you set one. Blue orchard bee
        females are the common coin; other bees are counted at their effectiveness.
      </p>
      <h3>Supplied</h3>
      <p>
        Of the female cocoons released, some open and some of those females stay to nest. They start over several days
        and stay at work for two or three weeks. On each day a female shares her visits among all blossom in reach: near
        before far, rich before poor, open before closed. Blossom that you did not draw takes its part too.
      </p>
      <h3>Three verdicts</h3>
      <p>
        <em>In reach</em>: how much of the planting lies near a station in use. <em>In time</em>: how well the flight
        meets the bloom, set against the best that one release could do. <em>In number</em>: the share of the females
        wanted that is supplied, counted plant by plant. They are kept apart, because they are put right in different
        ways.
      </p>
      <h3>How sure it is</h3>
      <p>
        Most of the figures behind this are known to a third or so, some less well. Press any underlined figure to see
        how it was worked out, from which values, with which range and source, and to put your own value in place of the
        default.
      </p>
      <h3>What it does not know</h3>
      <p>
        Frost, pollenizers, wild bees, honey bees, sprays and the weather of the coming spring. Coverage says whether
        enough mason bees are at work; it does not promise fruit.
      </p>
    </div>
  )
}
