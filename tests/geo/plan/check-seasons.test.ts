import { describe, expect, it } from 'vitest'
import { readPlan } from '#geo/file/read'
import { checkPlan } from '#geo/plan/check'
import { drop, planOf, put, sampleFile, sentences, spoilt, told } from '../file/sample-file'

const season = 'plan.seasons.0'
const at = 'plan.seasons[0]'
const apple = `${season}.bloom.apple`
const release = `${season}.stations.s1.releases.0`

const cases: Record<string, [string, string, string[], RegExp][]> = {
  seasons: [
    [
      'a year that is none',
      put(`${season}.year`, 20.26),
      [`error out-of-range at ${at}.year`],
      /Season 1: the year of the season is 20\.26/,
    ],
    ['half a year', put(`${season}.year`, 2026.5), [`error not-whole at ${at}.year`], /whole number/],
    [
      'the same year twice',
      spoilt(file => file.plan.seasons.push(sampleFile().plan.seasons[0])),
      ['warning season-repeated at plan.seasons[1].year'],
      /2026 is there more than once/,
    ],
  ],
  apple: [
    [
      'an apple date that does not exist',
      put(`${season}.appleFullBloom`, '2025-04-31'),
      [`warning date-impossible at ${at}.appleFullBloom`],
      /Season 2026: the date of full bloom of apple is the text “2025-04-31”/,
    ],
  ],
  bloom: [
    [
      'a day that does not exist',
      put(`${apple}.first`, '2026-02-30'),
      [`error date-impossible at ${at}.bloom.apple`],
      /Apple: the date of first bloom is the text “2026-02-30”/,
    ],
    [
      'a day written another way',
      put(`${apple}.end`, '6 May'),
      [`error date-impossible at ${at}.bloom.apple`],
      /YYYY-MM-DD/,
    ],
    [
      'full before first',
      put(`${apple}.full`, '2026-04-16'),
      [`error bloom-order at ${at}.bloom.apple`],
      /Apple in 2026 is out of order: first 2026-04-17, full 2026-04-16/,
    ],
    [
      'full on the day of the end',
      put(`${apple}.full`, '2026-05-06'),
      [`error bloom-order at ${at}.bloom.apple`],
      /out of order/,
    ],
    [
      'a stage seen that is none',
      put(`${apple}.observed`, ['first', 'fullest']),
      [`warning stage-unknown at ${at}.bloom.apple`],
      /Apple lists “fullest” among the stages seen/,
    ],
    [
      'a bloom of ten weeks',
      put(`${apple}.end`, '2026-07-01'),
      [`warning bloom-long at ${at}.bloom.apple`],
      /lasts 75 days/,
    ],
    [
      'a bloom of two years',
      put(`${apple}.first`, '2024-04-17'),
      [`warning date-far at ${at}.bloom.apple`, `error bloom-long at ${at}.bloom.apple`],
      /far outside the season 2026/,
    ],
    [
      "a planting's own bloom out of order",
      put(`${season}.bloom.row-3.end`, '2026-04-01'),
      ['error bloom-order at row-3'],
      /Row 3/,
    ],
    [
      'a crop that nobody grows here, out of order',
      put(`${season}.bloom.quince`, { first: '2026-05-01', full: '2026-05-01', end: '2026-05-09' }),
      [`warning bloom-order at ${at}.bloom.quince`],
      /Quince/,
    ],
    [
      'a bloom of nothing',
      put(`${season}.bloom.row-99`, sampleFile().plan.seasons[0].bloom.apple),
      [`note bloom-unused at ${at}.bloom.row-99`],
      /“row-99”/,
    ],
    [
      'a bloom of a station',
      put(`${season}.bloom.s1`, sampleFile().plan.seasons[0].bloom.apple),
      [`note bloom-unused at ${at}.bloom.s1`],
      /neither a crop nor anything drawn that blooms/,
    ],
  ],
  stations: [
    [
      'one that is not drawn',
      put(`${season}.stations.s9`, { tubes: 5 }),
      [`warning station-unknown at ${at}.stations.s9`],
      /“s9” that is not drawn/,
    ],
    [
      'one that is a row',
      put(`${season}.stations.row-3`, {}),
      [`warning station-unknown at ${at}.stations.row-3`],
      /drawn as something else/,
    ],
    [
      'a release on a day that does not exist',
      put(`${release}.date`, '2026-13-01'),
      ['error date-impossible at s1'],
      /North gate: the date of release/,
    ],
    ['a release a year late', put(`${release}.date`, '2027-09-06'), ['warning date-far at s1'], /check the year/],
    ['a release in another century', put(`${release}.date`, '1926-04-06'), ['error date-far at s1'], /1926-04-06/],
    ['fewer cocoons than none', put(`${release}.females`, -60), ['error out-of-range at s1'], /female cocoons is -60/],
    ['half a cocoon', put(`${release}.males`, 10.5), ['error not-whole at s1'], /male cocoons is 10\.5/],
    ['half a tube', put(`${season}.stations.s1.tubes`, 1.5), ['error not-whole at s1'], /tubes is 1\.5/],
    [
      'a bore of nothing',
      put(`${season}.stations.s1.bore`, 0),
      ['warning out-of-range at s1'],
      /bore of the tubes is 0/,
    ],
    ['a depth below nothing', put(`${season}.stations.s1.depth`, -150), ['warning out-of-range at s1'], /depth/],
  ],
  'cold store': [
    [
      'from a day that does not exist',
      put(`${season}.coldStore.from`, '2025-11-31'),
      [`warning date-impossible at ${at}.coldStore`],
      /Cold store of 2026: the date of its start is the text “2025-11-31”/,
    ],
    [
      'from another season',
      put(`${season}.coldStore.from`, '2024-11-01'),
      [`warning date-far at ${at}.coldStore`],
      /check the year/,
    ],
    [
      'as hot as degrees Fahrenheit',
      put(`${season}.coldStore.temperature`, 41),
      [`warning out-of-range at ${at}.coldStore`],
      /temperature of the cold store is 41; it should be from -30 to 40 °C/,
    ],
  ],
  weather: [
    [
      'a day that does not exist',
      put(`${season}.weather.days.1.0`, '2026-02-29'),
      [`error weather-date at ${at}.weather.days[1]`],
      /1 day whose date is no day/,
    ],
    [
      'a day twice',
      put(`${season}.weather.days.1.0`, '2026-03-01'),
      [`warning weather-repeated at ${at}.weather.days[1]`],
      /2026-03-01/,
    ],
    [
      'heat in another unit',
      put(`${season}.weather.days.0.2`, 77),
      [`error weather-out-of-range at ${at}.weather.days[0]`],
      /highest temperature on 2026-03-01 is 77/,
    ],
    [
      'rain below nothing',
      put(`${season}.weather.days.0.3`, -1),
      [`error weather-out-of-range at ${at}.weather.days[0]`],
      /rain/,
    ],
    [
      'a storm beyond storms',
      put(`${season}.weather.days.0.4`, 500),
      [`error weather-out-of-range at ${at}.weather.days[0]`],
      /wind/,
    ],
    [
      'lowest above highest',
      put(`${season}.weather.days.0.1`, 15),
      [`warning weather-order at ${at}.weather.days[0]`],
      /15 and 12\.3 °C/,
    ],
  ],
  records: [
    [
      'of a station that is not drawn',
      put(`${season}.records.s9`, {}),
      [`note record-unused at ${at}.records.s9`],
      /“s9”/,
    ],
    [
      'a visit on no day',
      put(`${season}.records.s1.visits.0.date`, 'May'),
      ['warning date-impossible at s1'],
      /date of visit/,
    ],
    [
      'capped tubes below nothing',
      put(`${season}.records.s1.visits.0.capped`, -1),
      ['warning out-of-range at s1'],
      /capped tubes is -1/,
    ],
    [
      'an opening on no day',
      put(`${season}.records.s1.opening.date`, '2026-10-32'),
      ['warning date-impossible at s1'],
      /nest opening/,
    ],
    [
      'half a cell',
      put(`${season}.records.s1.opening.cells`, 0.5),
      ['warning not-whole at s1', 'warning cells-overfull at s1'],
      /cells is 0\.5/,
    ],
    [
      'losses below nothing',
      put(`${season}.records.s1.opening.losses.mite`, -9),
      ['warning out-of-range at s1', 'note cells-missing at s1'],
      /losses\.mite in the file/,
    ],
    [
      'taking in on no day',
      put(`${season}.records.s1.takenIn`, '2026-06-31'),
      ['warning date-impossible at s1'],
      /date of taking in/,
    ],
    [
      'more capped than there are tubes',
      put(`${season}.records.s1.visits.0.capped`, 121),
      ['warning capped-over-tubes at s1'],
      /121 capped tubes in 2026, but the station has 120.*nothing is worked out from it/,
    ],
    [
      'fewer capped than before',
      put(`${season}.records.s1.visits.1`, { date: '2026-05-27', capped: 40 }),
      ['warning capped-falls at s1'],
      /40 capped tubes in 2026 after 41/,
    ],
    [
      'more tubes opened than there are',
      put(`${season}.records.s1.opening.tubesOpened`, 121),
      ['warning opened-over-tubes at s1'],
      /121 tubes opened/,
    ],
    [
      'more cocoons and losses than cells',
      put(`${season}.records.s1.opening.cells`, 117),
      ['warning cells-overfull at s1'],
      /come to 118, more than its 117 cells/,
    ],
    [
      'a tube fuller than it is',
      put(`${season}.records.s1.opening.tubes.0.females`, 3),
      ['warning cells-overfull at s1'],
      /tube 1 opened in 2026 come to 7/,
    ],
    [
      'cells unaccounted for',
      put(`${season}.records.s1.opening.cells`, 119),
      ['note cells-missing at s1'],
      /118 of the 119 cells/,
    ],
    [
      'more tubes listed than opened',
      put(`${season}.records.s1.opening.tubesOpened`, 1),
      ['warning tubes-listed at s1'],
      /2 tubes are listed/,
    ],
    [
      'few daughters',
      put(`${season}.records.s1.opening`, { date: '2026-10-20', females: 19, males: 81 }),
      ['warning female-share-odd at s1'],
      /19% .* under 20%/,
    ],
    [
      'many daughters',
      put(`${season}.records.s1.opening`, { date: '2026-10-20', females: 61, males: 39 }),
      ['warning female-share-odd at s1'],
      /61% .* over 60%/,
    ],
    [
      'less than no cocoons given away',
      put(`${season}.shareOut.shares.0.cocoons`, -1),
      [`warning out-of-range at ${at}.shareOut.shares[0]`],
      /Plot 1/,
    ],
    [
      'a lot set out twice over',
      put('plan.lots.0.count', 167),
      ['warning lot-overdrawn at plan.lots[0]'],
      /168 cocoons are set out from it, but it holds 167/,
    ],
    [
      'a lot from nowhere',
      put('plan.lots.0.station', 's9'),
      ['note lot-station-unknown at plan.lots[0]'],
      /“s9” that is not drawn/,
    ],
    ['a lot named twice', put('plan.lots.1', { id: 'A-25' }), ['warning lot-repeated at plan.lots[1]'], /Lot A-25/],
    [
      'a lot of nothing but females',
      put('plan.lots.0.femaleShare', 1),
      ['warning female-share-odd at plan.lots[0]'],
      /100% .* over 60%/,
    ],
    [
      'more fruit than flowers',
      put(`${season}.fruitSet.row-3.fruit`, 201),
      ['warning fruit-set-high at row-3'],
      /201 fruit from 200 flowers/,
    ],
    [
      'fruit of nothing',
      put(`${season}.fruitSet.row-9`, { flowers: 1, fruit: 1 }),
      [`note record-unused at ${at}.fruitSet.row-9`],
      /row-9/,
    ],
  ],
}

for (const [group, rows] of Object.entries(cases)) {
  describe(group, () => {
    it.each(rows)('%s', (_, file, places, words) => {
      const outcome = readPlan(file)
      expect(outcome.ok).toBe(true)
      expect(told(file)).toEqual(places)
      expect(sentences(outcome)[0]).toMatch(words)
    })
  })
}

it('believes a fall where damage was noted, and few cocoons of one sex', () => {
  const visit = { date: '2026-05-27', capped: 30, damage: 'a woodpecker took eleven tubes' }
  expect(told(put(`${season}.records.s1.visits.1`, visit))).toEqual([])
  expect(told(put(`${season}.records.s1.opening`, { date: '2026-10-20', females: 0, males: 19 }))).toEqual([])
})

it('accepts counts that were not made', () => {
  expect(told(put(`${season}.records.s1.visits.0.capped`, null))).toEqual([])
  expect(told(put(`${season}.records.s1.opening.cells`, null))).toEqual([])
  expect(told(put(`${season}.records.s1.opening.females`, null))).toEqual([])
  expect(told(put('plan.lots.0.count', null))).toEqual([])
  expect(told(drop(`${season}.records`))).toEqual([])
})

it('tells of a wrong column of weather once, with the number of days', () => {
  const days = Array.from({ length: 20 }, (_, i) => [`2026-03-${String(i + 10)}`, 40, 70 + i, null, null])
  const file = put(`${season}.weather.days`, days)
  expect(told(file)).toEqual([`error weather-out-of-range at ${at}.weather.days[0]`])
  expect(sentences(readPlan(file))[0]).toContain('20 days in all')
})

it('looks only at the season asked for', () => {
  const plan = planOf(
    readPlan(
      spoilt(file => {
        const old = structuredClone(file.plan.seasons[0])
        old.year = 2025
        old.bloom = { apple: { first: '2025-05-01', full: '2025-04-01', end: '2025-05-09' } }
        old.stations.s1.releases[0].date = '2025-04-06'
        file.plan.seasons.unshift(old)
      }),
    ),
  )
  expect(checkPlan(plan, 2026)).toEqual([])
  expect(checkPlan(plan, 2025).map(({ code }) => code)).toContain('bloom-order')
  expect(checkPlan(plan, 2031)).toEqual([])
})

it('tells of a fault in a hundred things, and how many more have it', () => {
  const bloom = sampleFile().plan.seasons[0].bloom.apple
  const file = put(`${season}.bloom`, Object.fromEntries(Array.from({ length: 130 }, (_, i) => [`x${i}`, bloom])))
  const { problems } = readPlan(file)
  expect(problems).toHaveLength(101)
  expect(problems.at(-1)).toMatchObject({ code: 'more-problems', severity: 'note', values: { count: 30 } })
})

it('does not take a bee from a plan put together in the program at its word', () => {
  const plan = planOf(readPlan(JSON.stringify(sampleFile())))
  const odd = { ...plan, bee: 'osmia-x' } as unknown as typeof plan
  expect(checkPlan(odd).map(({ code, at: place }) => [code, place])).toEqual([['bee-unknown', 'plan.bee']])
})
