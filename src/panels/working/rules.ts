import type { FoundFigure, WorkingTopic } from '../../state/store'

type Topic = Exclude<WorkingTopic['figure'], FoundFigure>

export const titles: Readonly<Record<Topic, string>> = {
  coverage: 'In number: coverage',
  reach: 'In reach',
  timingMatch: 'In time',
  wanted: 'Females wanted',
  supplied: 'Females supplied',
  shortBy: 'Short by',
  busiestDay: 'The busiest day',
  limit: 'What holds it back',
  females: 'Nesting females',
  cocoons: 'Cocoons',
  tubes: 'Tubes',
  rules: 'Two rules of thumb',
  wouldBe: 'Coverage as it would be',
  bound: 'How good the answer is',
  gain: 'What a station adds',
  placeCocoons: 'Cocoons of a suggested station',
  placeTubes: 'Tubes of a suggested station',
  cost: 'Cost',
  advisedCoverage: 'Coverage with the advised dates',
  typicalCoverage: 'Coverage on typical days',
  predictedBloom: 'Predicted full bloom',
  sure: 'Cocoons to be surer',
  seasonChange: 'One season beside the other',
  whyChanged: 'Why coverage changed',
  coverageFoundBeside: 'Coverage as found',
  ahead: 'The seasons to come',
}

const coins =
  'Females are counted as blue orchard bee females that nest. One of another bee counts for its effectiveness.'

/** Each figure's rule in words; the formulas are those of the worked model, told without signs. */
export const rules: Readonly<Record<Topic, readonly string[]>> = {
  coverage: [
    'Every plant (in beds, every square of 2 m by 2 m) wants a number of females and is supplied with a number of females. Coverage adds up what is supplied, though at no plant more than it wants, and divides by all that is wanted.',
    'So too many bees at one end do not make up for too few at the other.',
    coins,
  ],
  reach: [
    'The share of the females wanted whose plants stand within the typical foraging radius of a station that has bees. The radius holds half of a female’s trips where blossom is even; she also flies further, less often.',
  ],
  timingMatch: [
    'For each day: the share of the bloom’s open flowers that falls on it, times the females at work that day. Added up over the bloom, and set against the best that a single release on its best day could reach.',
    'Stations near the planting weigh more than far ones. How many bees there are plays no part here.',
  ],
  wanted: [
    'Ground of each plant (spacing times row spacing; in beds, the drawn area) times the crop’s stocking rate times vigour. Where a planting has its own number of females per plant, that number times vigour instead.',
    coins,
  ],
  supplied: [
    'Nesting females at each station are the female cocoons set out, times the share that emerges, times the share that stays to nest. They begin over several days and stop one by one: a mean nesting life.',
    'On each day every female shares her visits among all open blossom in reach, in proportion to flowers, appeal and nearness; blossom that nobody drew takes its part. What falls to a planting is weighed by how much of its bloom falls on that day, and set against a well-timed female that gives the crop the share of her visits which published rates take for granted.',
    'A female that works in one bloom after another counts in each, so this is not the number of bees there, nor a number to buy.',
    coins,
  ],
  shortBy: [
    'At every plant that is supplied with less than it wants, the difference; added up. Plants that get more than they want do not lower it.',
  ],
  busiestDay: [
    'For each day, the females wanted by each planting times how far its bloom is open that day, added up; the day with the largest sum is shown.',
    'Blooms that follow one another can be served by the same females, so all plantings added up overstate what is needed. The busiest day is the least that is needed at once.',
    'Bees set out on one date do not all fly through every bloom, so with a single release date more are needed. Whether there are enough is told by coverage, not by this figure.',
  ],
  limit: [
    'Coverage of the planting is worked out again with one thing put right at a time, and all else as planned: nests right beside it; the flight of each station on the planting’s best days; twice the bees; no other blossom but the plantings.',
    'The remedy that gains most names what holds it back, if it gains more than two hundredths. Where no station with bees lies in flying range, it says so instead.',
    'Where none gains that much and coverage is low, the planting lacks so much that no single change is enough.',
  ],
  females: [
    'Female cocoons set out times the share that emerges times the share of those that stay and nest at the station. In the station’s own species.',
  ],
  cocoons: [
    'Female cocoons are the nesting females divided by the share that emerges and the share that stays. Males beside them: males per female. Both are rounded up to whole cocoons.',
  ],
  tubes: [
    'Nesting females times the tubes that each should find, and a share of spare tubes on top; rounded up. More tubes are offered than are filled: a full house sends females away.',
  ],
  rules: [
    'A rate by area (females for each hectare or acre) comes from orchards planted densely. A number for each tree comes from gardens with large trees. On the same ground they can differ several times over; neither is hidden in the other here.',
    'The count uses the rate by area. Give a planting its own females per plant, under Ground, to use the other.',
  ],
  wouldBe: [
    'The season is counted again with the suggested stations in it, each where it is suggested and with the whole cocoons that are listed, by the same rule as coverage everywhere here.',
    'Where plantings were given weights, the orchard’s figure counts each female as often as its planting’s weight says; under Coverage all count alike.',
    'It is as uncertain as coverage itself: accept, and the range is worked out under Coverage.',
  ],
  bound: [
    'Service of each place to each plant is worked out once. Places are then chosen one at a time, each the one that adds most, exchanged as long as an exchange helps, and the search begins again from shuffled choices; the same question gives the same answer every time.',
    'The bound answers an easier question, in which a plant may be promised to several places at a price. What even that cannot exceed, no true layout can. Prove it asks a general solver for mixed-integer programmes, which closes the gap given time.',
    'Not every spot is looked at: places are thinned, and finer ones are added round the best. To see what that costs, as many stations were placed once more among about twice as many places.',
    'The bounds speak of the places that were looked at and of this stock, and of the figures as they stand: not of other places, other stock or another spring.',
  ],
  gain: [
    'The season is counted once with all suggested stations and once without this one. The difference of the females served at each planting, never counting more at a plant than it wants, is what would be missing without it.',
    coins,
  ],
  placeCocoons: [
    'Whole female cocoons, rounded up to the sets they are sold in. Males beside them: males per female, rounded up.',
    'Nesting females are the female cocoons times the share that emerges and the share that stays.',
  ],
  placeTubes: [
    'Nesting females times the tubes that each should find, and a share of spare tubes on top; rounded up. A station that moves keeps the tubes it has.',
  ],
  cost: [
    'Stations, cocoons of both sexes and tubes that are to be bought, each times its price. Stations that stand or move cost nothing here, nor do tubes that hang there already.',
    'Prices are the ones that you gave; where you gave none, they are assumed. It is no quotation, and no promise of a crop.',
  ],
  sure: [
    'Nesting females divided by the share of cocoons that give one is enough only every other time: by luck the rest comes out lower.',
    'If each cocoon gave a nesting female with the same chance, whatever the others did, their number would follow the binomial distribution. Shown is the least number of cocoons with which as many females as are counted on, or more, nest with a chance of nine in ten; rounded up to whole sets. All stations of the list are taken together, for luck evens out over many.',
    'Cocoons of one lot do not fare apart: a parasite, a frost or a bad store strikes many at once. This is a margin against luck alone, not against a bad lot or a cold spring.',
  ],
  advisedCoverage: [
    'The season is counted with the cocoons that the stations hold, set out on other days: every day on which blossom near a nest is open for the first nesting females, first for all at once, then in two or three batches whose days and shares are moved as long as that helps. A further batch is advised only where it is worth the second walk.',
    'What is compared is coverage itself: females that reach open flowers, never counted beyond what a plant wants. Bloom is taken as dated in the plan: where it comes earlier or later, look again.',
    'No date is earlier than blossom allows: early females that find nothing open may leave, however well the date would suit a later crop.',
  ],
  typicalCoverage: [
    'The season is counted a second time as if it held no weather: on every day bees work as on a typical spring day.',
    'With weather, the hours of a day are rebuilt from its lowest and highest temperature; each hour of daylight counts by how warm it is for the bee, less for rain and wind. The sum, against the hours of a typical day, is that day’s flying time. Days that are not known count as typical.',
    'Both are estimates: a garden behind a hedge is warmer than the station that measured.',
  ],
  predictedBloom: [
    'Warmth above a base temperature is added up day by day from a fixed date (degree-days); a crop stands in full bloom when its own total is reached. Totals do not travel between climates: where you marked full bloom as seen in a season that has weather, the total of that season at your place is used instead of the table’s, and the date is surer.',
    'A crop without a total of its own, or whose total is less sure, is reckoned by days from apple, as you saw it or by its own warmth. Of all ways the one with the smallest spread is taken.',
    'The days earlier or later are one standard deviation, or the spread of the table: one year in three lies outside.',
  ],
  seasonChange: [
    'Each season is counted by itself, with its own plantings, stations, cocoons, bloom dates and weather, by the rules of the page Coverage; the change is the later less the earlier. Both are counted with the same figures, those of the plan as it is now.',
    'A planting that does not stand in one of the seasons is not there: it has no figure then, and nought would be wrong.',
    'Changes of shares are told in points: from 13% to 47% is +34 points.',
  ],
  whyChanged: [
    'Between the two seasons six things may differ: what stands in the ground, where stations stand, stock and batches, bloom dates, weather, and figures. Coverage is worked out for every mixture of the two seasons that these make.',
    'What one of them adds depends on what has changed before it: a new station does more where there are bees for it. So each is given what it adds on average over all orders in which the changes might have come (Shapley 1953). The parts add up to the whole change exactly, and no order goes before another.',
    'For each mixture dates keep their day of the season, so a leap year shifts nothing.',
  ],
  coverageFoundBeside: [
    'The most tubes seen capped at a station, divided by the tubes that one female fills, are the females that really nested there; as a range, for females fill more or fewer. Coverage is then counted again with these in place of those reckoned with; a station without a count keeps the planned number.',
    'Low and high go by the same figure in both seasons. Whatever it truly is, more capped tubes for as many cocoons mean that more nested.',
  ],
  ahead: [
    'Female cocoons set out times the share that emerges and the share that stays give the females that nest; these fill tubes, at most those there are; tubes hold cells, and of the cells a share comes through the year, by the care taken, and a share of those is daughters. The daughters that are kept are set out in the next season.',
    'Every figure of growth is taken to the low and to the high end of its range, so far that their product errs as independent figures do, and is held there in every season: what is not known about these bees stays unknown. That is why the band widens.',
    'Where a season was counted, its counts stand in place of what is reckoned, and the band begins anew from them.',
    'Bloom, places, batches and tubes stay as they are in the season it begins from. It is no promise: frost, parasites and a bad store strike many nests at once, and may end below the band.',
  ],
}
