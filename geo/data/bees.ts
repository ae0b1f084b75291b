import { assumed, figure } from './figure'
import type { BeeId } from './own'
import type { Parameter } from './parameter'
import type { SourceKey } from './sources'

export const beeParameterNames = [
  'typicalForagingRadius',
  'maxForagingRange',
  'effectiveness',
  'emergence',
  'establishment',
  'malesPerFemale',
  'lag',
  'spreadDays',
  'nestingLife',
  'tubesPerFemale',
  'tubesUsedPerFemale',
  'cellsPerTube',
  'femaleShare',
  'keepingOutside',
  'keepingTakenIn',
  'flightFrom',
  'flightFull',
  'boreMin',
  'boreMax',
  'depthMin',
] as const
export type BeeParameterName = (typeof beeParameterNames)[number]

export type BeeRecord = {
  readonly id: BeeId
  readonly name: string
  readonly latin: string
  /** Where it is native. */
  readonly native: string
  /** Which blooms it suits. */
  readonly goodFor: string
  /** What to weigh before releasing it. */
  readonly caution: string
  /** Sources of the three texts above. */
  readonly sources: readonly SourceKey[]
  readonly parameters: Readonly<Record<BeeParameterName, Parameter>>
}

/** What the parameters of a bee mean, once for all four; each figure's own `about` says where its value comes from. */
export const beeParameterMeanings: Readonly<Record<BeeParameterName, string>> = {
  typicalForagingRadius: 'Radius round the nest that holds half of the flower trips where blossom is even',
  maxForagingRange: 'Distance beyond which no trip is counted',
  effectiveness: "Pollination by one nesting female, in blue orchard bee females' worth",
  emergence: 'Share of healthy female cocoons from which a bee comes out',
  establishment: 'Share of emerged females that nest at the station',
  malesPerFemale: 'Male cocoons set out per female cocoon',
  lag: 'Mean days from release to the first day of nesting',
  spreadDays: 'Standard deviation of that first day among the females of one batch',
  nestingLife: 'Mean days that a nesting female stays at work',
  tubesPerFemale: 'Tubes to offer per nesting female',
  tubesUsedPerFemale: 'Tubes that a nesting female fills',
  cellsPerTube: 'Brood cells in a filled tube',
  femaleShare: 'Share of daughters among the brood',
  keepingOutside: 'Share of cells that give a live adult in spring, nests left where they are',
  keepingTakenIn: 'Share of cells that give a live adult in spring, cocoons taken in, sorted and kept cold',
  flightFrom: 'Air temperature at which work begins',
  flightFull: 'Air temperature from which an hour counts in full',
  boreMin: 'Narrowest bore that suits it',
  boreMax: 'Widest bore that suits it',
  depthMin: 'Shortest tube that suits it',
}

/** r50 = 1.678346990016661 alpha (half of the trips, decay exp(-d/alpha) over even blossom). */
const radiusNote = (alpha: string) => `1.678347 times the decay length alpha of ${alpha}.`

const lignaria: BeeRecord = {
  id: 'osmia-lignaria',
  name: 'Blue orchard bee',
  latin: 'Osmia lignaria',
  native: 'Native to most of North America, with an eastern and a western form.',
  goodFor: 'Almond, apricot, cherry, plum, pear and apple; a poor fit for blueberry.',
  caution:
    'Use stock raised in your own region: strains differ in timing and in how readily they stay. Do not release it outside North America.',
  sources: ['mader2010', 'scalici2023', 'pinilla2018', 'memory'],
  parameters: {
    typicalForagingRadius: figure(
      'm',
      [42, 67.1, 134.3],
      'derived',
      ['koh', 'mader2010', 'hofmann2020', 'lonsdorf2009'],
      `${radiusNote('40 m (25-80)')} Mean trips of about 80 m in almond are two alpha; a working radius of 90 m and a planting rule of 150 m agree. The high end takes those 80 m for alpha itself.`,
    ),
    maxForagingRange: figure(
      'm',
      [150, 300, 600],
      'assumed',
      ['rust1990', 'assumed'],
      'At 300 m the decay has fallen below a thousandth. Willow was fetched from 300 and 600 m where nothing nearer bloomed: possible, but no pollination to plan on.',
    ),
    effectiveness: assumed(
      '1',
      [1, 1, 1],
      'By definition: all females wanted are counted in blue orchard bee females.',
    ),
    emergence: figure(
      'share',
      [0.8, 0.9, 0.97],
      'assumed',
      ['memory', 'bosch2021'],
      'Well-timed cold storage keeps 85 to 95 %, from memory; O. cornuta in an almond trial, 92 %, lies within.',
    ),
    establishment: figure(
      'share',
      [0.2, 0.5, 0.7],
      'derived',
      'mccabe2024',
      'Of the females released 65 % nested in sweet cherry, at most 20 % in pear and 30-60 % in other orchards; their middle, 45 %, divided by an emergence of 0.9.',
    ),
    malesPerFemale: figure(
      '1',
      [1, 1.8, 2.5],
      'derived',
      ['bosch2006', 'medler'],
      'About two in six seasons of Utah cherry, near one in Wisconsin trap nests; taken near the managed ratio.',
    ),
    lag: figure(
      'd',
      [6, 8, 12],
      'derived',
      ['mader2010', 'boschKemp2003', 'memory'],
      'Females come out about 6 days (4-9) after cold-stored cocoons meet 20 degC: males need up to 5, females follow when half the males are out. Two days of mating and searching are added, from memory.',
    ),
    spreadDays: figure(
      'd',
      [2, 3, 6],
      'assumed',
      ['memory', 'assumed'],
      'About 2 days of spread at emergence after cold storage, 6 outdoors; a day more for the search of a nest.',
    ),
    nestingLife: figure(
      'd',
      [12, 18, 25],
      'assumed',
      'memory',
      'Two to three and a half weeks, from memory; a flight period of 4 to 6 weeks per release agrees.',
    ),
    tubesPerFemale: figure(
      'tubes',
      [2, 3, 4],
      'assumed',
      'memory',
      "Keepers' rule of three; females also sleep in empty tubes, and a full house sends them away.",
    ),
    tubesUsedPerFemale: assumed(
      'tubes',
      [1, 1.8, 3.5],
      'Eleven cells (6-20) per nesting female over six cells per tube.',
    ),
    cellsPerTube: figure('cells', [4, 6, 8], 'assumed', 'memory', 'Tubes of 150 mm; longer ones hold more.'),
    femaleShare: figure(
      'share',
      [0.25, 0.37, 0.5],
      'derived',
      ['bosch2008', 'medler', 'memory'],
      'One over one plus 1.7 males per daughter; poor flowers, late season and tight tubes give more sons, good Wisconsin nests half daughters.',
    ),
    keepingOutside: figure(
      'share',
      [0.2, 0.45, 0.65],
      'assumed',
      ['bosch1992', 'mader2010', 'assumed'],
      'About 0.6 reach adulthood where mites and wasps go unchecked (mite cells rose sixfold in a season) and 0.75 of those outlive winter, birds and mould.',
    ),
    keepingTakenIn: figure(
      'share',
      [0.48, 0.74, 0.87],
      'assumed',
      'memory',
      'Egg to adult 0.8 (0.6-0.9) times winter in cold store 0.92 (0.8-0.97).',
    ),
    flightFrom: figure(
      'degC',
      [10, 12, 13],
      'assumed',
      ['edmunds2016', 'memory'],
      'First flights in sun at 12 to 13 degC, from memory; bees come out when air reaches 10 to 13.',
    ),
    flightFull: figure('degC', [14, 15, 16], 'assumed', 'memory', 'From memory; no published threshold was found.'),
    boreMin: figure(
      'mm',
      [6.5, 7, 7.5],
      'derived',
      ['mader2010', 'medler'],
      'Handbook bore 7.5 mm and almond boxes of 7 mm; narrower tubes were used in Wisconsin but give more sons.',
    ),
    boreMax: figure(
      'mm',
      [8, 8.5, 9],
      'derived',
      'mader2010',
      'The usual drill of 7.9 mm with half a millimetre of room; wider costs mud.',
    ),
    depthMin: figure(
      'mm',
      [130, 150, 200],
      'measured',
      ['mader2010', 'spendal2022'],
      'Handbook depth of six inches, 152 mm; twice that gave more daughters.',
    ),
  },
}

const bicornis: BeeRecord = {
  id: 'osmia-bicornis',
  name: 'Red mason bee',
  latin: 'Osmia bicornis',
  native: 'Native to Europe, the Near East and North Africa.',
  goodFor: 'Late apple, pear, strawberry, raspberry and currants.',
  caution:
    'In cool springs, and near oak, buttercup or oilseed rape, it may give fruit trees few visits: count on it less. Not native to the Americas: do not release it there.',
  sources: ['magnin2025', 'bilinski2004', 'memory'],
  parameters: {
    typicalForagingRadius: figure(
      'm',
      [42, 67.1, 134.3],
      'derived',
      ['giejdasz2025', 'hofmann2020', 'lonsdorf2009'],
      `${radiusNote('40 m (25-80)')} No decay was measured for it: taken as for the blue orchard bee, since nests within 60 m served pear and mason bees of its size flew 73-121 m on average.`,
    ),
    maxForagingRange: figure(
      'm',
      [150, 300, 600],
      'derived',
      'gathmann2002',
      'Sixteen solitary bees flew at most 150 to 600 m, the larger ones farther. At 300 m the decay has fallen below a thousandth.',
    ),
    effectiveness: figure(
      '1',
      [0.1, 0.67, 1],
      'derived',
      ['schindler2011', 'magnin2025', 'bilinski2004'],
      'Apple: 600 blue orchard bee females over the 900 assumed for this bee. Set out together in Switzerland it made a tenth of the visits of O. cornuta, with a third of its crop pollen; part of that was poor nesting, counted under establishment: low end.',
    ),
    emergence: figure(
      'share',
      [0.8, 0.9, 0.97],
      'assumed',
      ['memory', 'bosch2021'],
      'Well-timed cold storage keeps 85 to 95 %, from memory; no count for this bee.',
    ),
    establishment: figure(
      'share',
      [0.1, 0.3, 0.5],
      'derived',
      ['steffan2004', 'magnin2025'],
      'Of 974 females 222 were seen again at the nests (23 %); not every one can be seen. In Switzerland it nested five times less than O. cornuta: low end.',
    ),
    malesPerFemale: figure(
      '1',
      [1, 1.5, 2],
      'assumed',
      ['giejdasz2016', 'memory'],
      'Broods hold 1.2 to 2 males per female, from memory.',
    ),
    lag: figure(
      'd',
      [7, 11, 16],
      'derived',
      ['magnin2025', 'memory'],
      'Comes out 4 (2-6) days after O. cornuta where both are set out together; emergence about 9 days at 20 degC, then two of mating.',
    ),
    spreadDays: figure(
      'd',
      [3, 4.5, 7],
      'assumed',
      ['memory', 'assumed'],
      'Emerges more slowly and less together than the early mason bees.',
    ),
    nestingLife: figure(
      'd',
      [12, 20, 30],
      'assumed',
      'memory',
      'From memory; its flight of 6 to 8 weeks per release is the longest of the four.',
    ),
    tubesPerFemale: figure(
      'tubes',
      [2, 3, 4],
      'derived',
      ['giejdasz2016', 'memory'],
      'Tubes used, 2.4, and about a quarter more.',
    ),
    tubesUsedPerFemale: figure(
      'tubes',
      [1, 2.4, 5],
      'derived',
      ['giejdasz2016', 'rufaHabitats'],
      'Sixteen cells per female over 6.6 cells per reed; females used one to five nests.',
    ),
    cellsPerTube: figure(
      'cells',
      [4, 6, 8],
      'derived',
      'rufaHabitats',
      'Reeds held 6.6 cells in meadow and 4.5-4.8 live cocoons in orchard and forest, which is about 6 cells at 0.8 survival.',
    ),
    femaleShare: figure(
      'share',
      [0.25, 0.38, 0.5],
      'derived',
      ['giejdasz2016', 'seidelmann2016', 'memory'],
      'One over one plus 1.6 males per daughter; the first two nests of a female hold mostly daughters, later and narrower ones mostly sons.',
    ),
    keepingOutside: figure(
      'share',
      [0.2, 0.45, 0.65],
      'assumed',
      ['bosch1992', 'assumed'],
      'As for the other mason bees: 0.6 to adulthood with enemies unchecked, 0.75 through winter outdoors.',
    ),
    keepingTakenIn: figure(
      'share',
      [0.51, 0.74, 0.87],
      'assumed',
      'memory',
      'Egg to adult 0.8 (0.6-0.9) times winter in cold store 0.93 (0.85-0.97).',
    ),
    flightFrom: figure(
      'degC',
      [8, 10, 11],
      'assumed',
      'memory',
      'First flights in sun at 8 to 10 degC are told by keepers; work is taken to begin at 10.',
    ),
    flightFull: figure('degC', [13, 15, 16], 'assumed', 'memory', 'From memory; no published threshold was found.'),
    boreMin: figure(
      'mm',
      [6, 7, 8],
      'derived',
      'seidelmann2016',
      'Best at 8 to 10 mm; 6 to 8 mm is common practice, the narrow end with more sons.',
    ),
    boreMax: figure('mm', [9, 10, 10], 'measured', 'seidelmann2016', 'Upper end of the best range.'),
    depthMin: figure(
      'mm',
      [130, 150, 200],
      'measured',
      'seidelmann2016',
      'Tubes of at least 150 mm; shorter ones cut the number of daughters.',
    ),
  },
}

const cornuta: BeeRecord = {
  id: 'osmia-cornuta',
  name: 'European orchard bee',
  latin: 'Osmia cornuta',
  native: 'Native to central and southern Europe, Turkey and North Africa; spreading northwards.',
  goodFor: 'Almond, apricot, cherry, plum, pear and apple, also in cool weather.',
  caution:
    'Introduced and spreading in British Columbia; cocoons cannot be told from native ones with certainty. Release it only where it is native or already lawfully kept.',
  sources: ['getz2024', 'vicensWeather2000', 'memory'],
  parameters: {
    typicalForagingRadius: figure(
      'm',
      [42, 75.5, 151.1],
      'derived',
      ['bosch2021', 'maccagnani2003', 'hofmann2020', 'lonsdorf2009'],
      `${radiusNote('45 m (25-90)')} A little over the blue orchard bee, being larger; fruit set of almond fell with distance from its nests, and a few females went 400 m.`,
    ),
    maxForagingRange: figure(
      'm',
      [200, 400, 600],
      'derived',
      'maccagnani2003',
      'Some females of a pear orchard carried pollen from 400 m; at that distance the decay is far below a thousandth.',
    ),
    effectiveness: figure(
      '1',
      [0.8, 1.13, 1.5],
      'derived',
      ['vicens2000', 'boschKemp2001', 'schindler2011'],
      'Apple: 600 blue orchard bee females over the 530 nesting females that sufficed; 741 over 530 gives 1.4.',
    ),
    emergence: figure(
      'share',
      [0.8, 0.92, 0.97],
      'derived',
      'bosch2021',
      'Of 198 females released 99 nested, printed as 54.4 %: the share of about 182 that came out.',
    ),
    establishment: figure(
      'share',
      [0.35, 0.54, 0.65],
      'derived',
      'bosch2021',
      'Ninety-nine of about 182 emerged females nested in almond, half of those released.',
    ),
    malesPerFemale: figure(
      '1',
      [1, 1.6, 2.2],
      'assumed',
      ['bosch2008', 'memory'],
      'Broods hold 1.2 to 2 males per female, from memory.',
    ),
    lag: figure(
      'd',
      [5, 7, 11],
      'derived',
      ['boschBlas1994', 'magnin2025', 'memory'],
      'Cold-stored bees are all out within a week, females about day 5 at 20 degC; two days of mating are added. Four days before the red mason bee.',
    ),
    spreadDays: figure(
      'd',
      [2, 2.5, 6],
      'derived',
      ['boschBlas1994', 'assumed'],
      'All out within a week is a spread of about 1.5 days; a day more for the search of a nest, much more after a winter outdoors.',
    ),
    nestingLife: figure(
      'd',
      [12, 18, 24],
      'assumed',
      ['vicens2000', 'memory'],
      'At work throughout an apple bloom of 15 days; the mean is from memory.',
    ),
    tubesPerFemale: figure(
      'tubes',
      [2, 2.5, 4],
      'derived',
      ['bosch2021', 'memory'],
      'Fills about 1.5 tubes; offered with room to choose and to sleep.',
    ),
    tubesUsedPerFemale: figure(
      'tubes',
      [1, 1.5, 3],
      'derived',
      'bosch2021',
      'Cells per nesting female, 9.15, over six cells per tube.',
    ),
    cellsPerTube: figure('cells', [4, 6, 9], 'assumed', ['bosch1994', 'memory'], 'Finished nests hold 2 to 10 cells.'),
    femaleShare: figure(
      'share',
      [0.25, 0.37, 0.45],
      'derived',
      ['bosch2021', 'bosch2008'],
      'Released females grew 1.28-fold from 906 cells: 0.28 daughters per cell, over 0.754 alive in spring.',
    ),
    keepingOutside: figure(
      'share',
      [0.2, 0.45, 0.65],
      'assumed',
      ['bosch1992', 'assumed'],
      'Mite cells rose sixfold in a season without care; 0.6 to adulthood, 0.75 through winter outdoors.',
    ),
    keepingTakenIn: figure(
      'share',
      [0.52, 0.75, 0.89],
      'assumed',
      ['bosch1992', 'memory'],
      'Egg to adult 0.82 (0.65-0.92) times winter in cold store 0.92 (0.8-0.97); 0.1 to 13 % of cells of kept bees are parasitised.',
    ),
    flightFrom: figure(
      'degC',
      [5, 8, 10],
      'assumed',
      ['vicensWeather2000', 'memory'],
      'Two to four degrees below full work; keepers tell of flights at 5.',
    ),
    flightFull: figure(
      'degC',
      [10, 12, 12],
      'measured',
      'vicensWeather2000',
      'In apple fully active from 10 to 12 degC, in wind and light rain too.',
    ),
    boreMin: figure('mm', [7, 8, 8], 'measured', 'bosch1994', 'Eight millimetres preferred.'),
    boreMax: figure('mm', [9, 10, 10], 'derived', 'bosch1994', 'Eight to ten millimetres taken.'),
    depthMin: figure(
      'mm',
      [150, 180, 210],
      'derived',
      'bosch1994',
      'Chose tubes of 210 mm; from 150 mm on they are used.',
    ),
  },
}

const cornifrons: BeeRecord = {
  id: 'osmia-cornifrons',
  name: 'Hornfaced bee',
  latin: 'Osmia cornifrons',
  native: 'Native to Japan, Korea and eastern China.',
  goodFor: 'Cherry, pear, apple and blueberry.',
  caution:
    'Introduced and established in eastern North America, where native mason bees have declined since another Asian species arrived. Release it only where it is native or already lawfully kept.',
  sources: ['lecroy2020', 'macivor2022', 'memory'],
  parameters: {
    typicalForagingRadius: figure(
      'm',
      [25.2, 50.4, 75.5],
      'derived',
      ['biddinger2013', 'lonsdorf2009'],
      `${radiusNote('30 m (15-45)')} Most marked cherry flowers stood within 35 m of the nests and the marks fell off steeply to 55 m, the farthest tree looked at.`,
    ),
    maxForagingRange: figure(
      'm',
      [100, 200, 500],
      'assumed',
      ['biddinger2013', 'assumed'],
      'At 200 m its decay has fallen to about a thousandth; marks were not looked for beyond 55 m, homing from 700 m is told.',
    ),
    effectiveness: figure(
      '1',
      [0.7, 1, 1.5],
      'derived',
      ['mader2010', 'cornifronsKorea'],
      'Thought equal to the blue orchard bee; in Korea 500 females released per hectare set as much apple as 2,000, which speaks for more.',
    ),
    emergence: figure(
      'share',
      [0.8, 0.9, 0.97],
      'assumed',
      ['memory', 'bosch2021'],
      'Well-timed cold storage keeps 85 to 95 %, from memory; no count for this bee.',
    ),
    establishment: assumed(
      'share',
      [0.25, 0.45, 0.6],
      'No count was found: between the red mason bee and the other two.',
    ),
    malesPerFemale: figure(
      '1',
      [1, 2, 2.5],
      'measured',
      ['cornifronsKorea', 'yoon2016'],
      'Two males per female gave the most nesting in a Korean trial; cocoons from the wild vary from equal numbers to nearly three of one sex.',
    ),
    lag: figure(
      'd',
      [6, 8, 12],
      'derived',
      ['mader2010', 'memory'],
      'As for the blue orchard bee: about 6 days to emergence at 20 degC, two of mating.',
    ),
    spreadDays: assumed('d', [2, 3, 6], 'As for the blue orchard bee: the same cold storage, the same warming.'),
    nestingLife: figure('d', [12, 18, 25], 'assumed', 'memory', 'From memory; adults live 4 to 8 weeks in all.'),
    tubesPerFemale: figure('tubes', [2, 3, 4], 'assumed', 'memory', "Keepers' rule of three."),
    tubesUsedPerFemale: figure(
      'tubes',
      [1, 1.4, 3],
      'derived',
      ['yoon2016', 'memory'],
      'Eleven cells (6-18) per nesting female, from memory, over eight cells per tube.',
    ),
    cellsPerTube: figure('cells', [6, 8, 9], 'measured', 'yoon2016', 'Bamboo open at one end held 7.6 to 8.5 cocoons.'),
    femaleShare: figure(
      'share',
      [0.25, 0.36, 0.5],
      'assumed',
      ['yoon2016', 'memory'],
      'One over one plus 1.8 males per daughter.',
    ),
    keepingOutside: figure(
      'share',
      [0.15, 0.4, 0.6],
      'assumed',
      ['mader2010', 'assumed'],
      'Mites take up to 30 % of a year where nothing is done (Japan): 0.55 to adulthood, 0.72 through winter outdoors.',
    ),
    keepingTakenIn: figure(
      'share',
      [0.4, 0.7, 0.86],
      'assumed',
      'memory',
      'Egg to adult 0.78 (0.5-0.9) times winter in cold store 0.9 (0.8-0.96).',
    ),
    flightFrom: figure(
      'degC',
      [9, 11, 12],
      'assumed',
      ['matsumoto2010', 'memory'],
      'Works in cooler weather than honey bees; the figure is from memory.',
    ),
    flightFull: figure(
      'degC',
      [13, 15, 16],
      'assumed',
      ['matsumoto2010', 'memory'],
      'Activity rises with temperature; the figure is from memory.',
    ),
    boreMin: figure('mm', [5.8, 6, 7], 'measured', 'mader2010', 'Reeds of 5.8 to 6 mm are used in Japan.'),
    boreMax: figure('mm', [7, 8, 8.5], 'assumed', 'memory', 'Tubes for blue orchard bees are taken too.'),
    depthMin: figure('mm', [120, 140, 150], 'measured', 'mader2010', 'Reeds of 120 to 140 mm in Japan.'),
  },
}

export const bees: Readonly<Record<BeeId, BeeRecord>> = {
  'osmia-lignaria': lignaria,
  'osmia-bicornis': bicornis,
  'osmia-cornuta': cornuta,
  'osmia-cornifrons': cornifrons,
}
