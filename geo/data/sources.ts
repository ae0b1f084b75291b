/**
 * How a source was seen: `read` in full or computed from its data, `excerpt` (its own abstract or a passage, or another
 * text quoting it), `memory` (not looked up: treat the figure as an estimate).
 */
export type Seen = 'read' | 'excerpt' | 'memory'

export type Source = {
  readonly authors: string
  readonly year: number | null
  readonly title: string
  readonly where: string
  readonly seen: Seen
}

const excerpt = (authors: string, year: number | null, title: string, where: string): Source => ({
  authors,
  year,
  title,
  where,
  seen: 'excerpt',
})

/** The bibliography: every figure in the tables names one or more of these. */
export const sources = {
  // Not publications
  assumed: {
    authors: 'This planner',
    year: null,
    title: 'Our own choice',
    where: 'the reason stands beside each figure',
    seen: 'memory',
  },
  memory: {
    authors: 'From memory',
    year: null,
    title: 'Widely repeated among keepers and in textbooks, not checked against a source: a value from memory says so',
    where: 'no source at hand',
    seen: 'memory',
  },

  // How far mason bees fly
  biddinger2013: excerpt(
    'Biddinger, Joshi, Rajotte, Halbrendt, Pulig, Naithani & Vaughan',
    2013,
    'An immunomarking method to determine the foraging patterns of Osmia cornifrons and resulting fruit set in a cherry orchard',
    'Apidologie',
  ),
  gathmann2002: excerpt(
    'Gathmann & Tscharntke',
    2002,
    'Foraging ranges of solitary bees',
    'Journal of Animal Ecology 71:757-764',
  ),
  giejdasz2025: excerpt(
    'Giejdasz, Fliszkiewicz, Dylewski & Banaszak-Cibicka',
    2025,
    'Red mason bees among the pollinators of a pear orchard',
    'abstract; title as we word it',
  ),
  hofmann2020: excerpt(
    'Hofmann, Fleischmann & Renner',
    2020,
    'Foraging distances in six species of solitary bees with body lengths of 6 to 15 mm',
    'Journal of Hymenoptera Research 77:105-117',
  ),
  koh: excerpt(
    'Koh, Lonsdorf, Artz, Pitts-Singer & Ricketts',
    null,
    'Ecology and economics of alternative native bees for almond pollination',
    'manuscript',
  ),
  lonsdorf2009: excerpt(
    'Lonsdorf, Kremen, Ricketts, Winfree, Williams & Greenleaf',
    2009,
    'Modelling pollination services across agricultural landscapes',
    'Annals of Botany 103:1589-1600',
  ),
  maccagnani2003: excerpt(
    'Maccagnani, Ladurner, Santi & Burgio',
    2003,
    'Osmia cornuta as a pollinator of pear',
    'Apidologie 34:207-216; title as we word it',
  ),
  rust1990: excerpt(
    'Rust',
    1990,
    'Spatial and temporal heterogeneity of pollen foraging in Osmia lignaria propinqua',
    'Environmental Entomology 19:332-338',
  ),

  // How many are needed
  boschKemp2001: excerpt(
    'Bosch & Kemp',
    2001,
    'How to Manage the Blue Orchard Bee as an Orchard Pollinator',
    'Sustainable Agriculture Network handbook 5, Beltsville',
  ),
  bosch2006: excerpt(
    'Bosch, Kemp & Trostle',
    2006,
    'Bee population returns and cherry yields in an orchard pollinated with Osmia lignaria',
    'Journal of Economic Entomology 99:408-413',
  ),
  cornifronsKorea: excerpt(
    'Authors not shown',
    null,
    'Osmia cornifrons released in Korean apple orchards: number of bees and ratio of the sexes',
    'abstract in a Korean index; title as we word it',
  ),
  mader2010: excerpt(
    'Mader, Spivak & Evans',
    2010,
    'Managing Alternative Pollinators',
    'SARE Handbook 11, chapter 6 and appendix A',
  ),
  schindler2011: excerpt(
    'Schindler & Peters',
    2011,
    'Osmia bicornis and Osmia cornuta as orchard pollinators',
    'Erwerbs-Obstbau 52:111-116, digest; title as we word it',
  ),
  vicens2000: excerpt(
    'Vicens & Bosch',
    2000,
    "Pollinating efficacy of Osmia cornuta and Apis mellifera on 'Red Delicious' apple",
    'Environmental Entomology 29:235-240',
  ),

  // Life of the bees
  bosch1992: excerpt(
    'Bosch',
    1992,
    'Parasitism in wild and managed populations of the almond pollinator Osmia cornuta',
    'Journal of Apicultural Research 31:77-82',
  ),
  bosch1994: excerpt(
    'Bosch',
    1994,
    'The nesting behaviour of the mason bee Osmia cornuta with special reference to its pollinating potential',
    'Apidologie 25:71-83',
  ),
  boschBlas1994: excerpt(
    'Bosch & Blas',
    1994,
    'Effect of over-wintering and incubation temperatures on adult emergence in Osmia cornuta',
    'Apidologie 25:265-277',
  ),
  boschKemp2000: excerpt(
    'Bosch & Kemp',
    2000,
    'Temperature and the development of Osmia lignaria from egg to adult',
    'Environmental Entomology 29:8-13; title as we word it',
  ),
  boschKemp2003: excerpt(
    'Bosch & Kemp',
    2003,
    'Effect of wintering duration and temperature on survival and emergence time in males of Osmia lignaria',
    'Environmental Entomology 32:711-716',
  ),
  kraemerFavi2010: excerpt(
    'Kraemer & Favi',
    2010,
    'Emergence of Osmia lignaria and the bloom of redbud, in chill and warmth; title as we word it',
    'Environmental Entomology 39:351-358',
  ),
  boschKemp2004: excerpt(
    'Bosch & Kemp',
    2004,
    'Length and warmth of the winter, and warmth before it, in Osmia cornuta',
    'Apidologie 35:469-479; title as we word it',
  ),
  bicornisWinter2025: excerpt(
    'Authors not shown',
    2025,
    'Winter temperature, survival and offspring of Osmia bicornis',
    'Scientific Reports, doi:10.1038/s41598-025-86729-x; title as we word it',
  ),
  sekita: excerpt(
    'Sekita & Yamada',
    null,
    'Use of Osmia cornifrons for pollination of apples in Aomori Prefecture, Japan',
    'JARQ 26(4):264; title as we word it',
  ),
  bosch2008: excerpt(
    'Bosch',
    2008,
    'Production of undersized offspring in a solitary bee',
    'Animal Behaviour 75:809-816',
  ),
  bosch2021: excerpt(
    'Bosch, Osorio-Canadas, Sgolastra & Vicens',
    2021,
    'Use of a managed solitary bee to pollinate almonds: population sustainability and increased fruit set',
    'Insects 12(1):56',
  ),
  edmunds2016: excerpt(
    'Edmunds, Little & Sagili',
    2016,
    'Nurturing Mason Bees in Your Backyard in Western Oregon',
    'Oregon State University Extension EM 9130',
  ),
  giejdasz2016: excerpt(
    'Giejdasz and others',
    2016,
    'Reproductive potential and nesting effects of Osmia rufa female',
    'Journal of Apicultural Science 60(1)',
  ),
  magnin2025: excerpt(
    'Magnin, Bianchi & Hagenbucher',
    2025,
    'Osmia cornuta and Osmia bicornis set out together in Swiss cherry and apple orchards',
    'Journal of Applied Entomology; title as we word it',
  ),
  marquez1994: excerpt(
    'Márquez and others',
    1994,
    'Pollens collected by wild and managed populations of the potential orchard pollinator Osmia cornuta',
    'Journal of Applied Entomology 117:353-359',
  ),
  matsumoto2010: excerpt(
    'Matsumoto & Maejima',
    2010,
    'Foraging of Osmia cornifrons in apple and its dependence on weather',
    'Psyche 384371; title as we word it',
  ),
  mccabe2024: excerpt(
    'McCabe, Boyle & Pitts-Singer',
    2024,
    'Osmia lignaria beside honey bees in sweet cherry and pear: retention and fruit set',
    'Environmental Entomology 53:698-705; title as we word it',
  ),
  medler: excerpt('Medler', null, 'Biology of Osmia in trap nests in Wisconsin', 'abstract'),
  rufaHabitats: excerpt(
    'Authors not shown',
    null,
    'Reproduction of the red mason solitary bee in various habitats',
    'abstract',
  ),
  seidelmann2016: excerpt(
    'Seidelmann, Bienasch & Pröhl',
    2016,
    'The impact of nest tube dimensions on reproduction parameters in a cavity nesting solitary bee, Osmia bicornis',
    'Apidologie 47:114-122',
  ),
  spendal2022: excerpt(
    'Spendal & Cane',
    2022,
    'Nesting rate of Osmia lignaria females',
    'Apidologie 53:54; title as we word it',
  ),
  steffan2004: excerpt(
    'Steffan-Dewenter & Schiele',
    2004,
    'Nest-site fidelity, body weight and population size of the red mason bee, Osmia rufa',
    'Entomologia Generalis 27:123-131',
  ),
  vicensWeather2000: excerpt(
    'Vicens & Bosch',
    2000,
    'Weather-dependent pollinator activity in an apple orchard, with special reference to Osmia cornuta and Apis mellifera',
    'Environmental Entomology 29, agency abstract',
  ),
  yoon2016: excerpt(
    'Yoon, Lee, Kim, Kim & Kwon',
    2016,
    'Cocoons of Osmia cornifrons in bamboo nests',
    'Journal of Apiculture (Korea) 31:183-194; title as we word it',
  ),

  // Where they belong
  getz2024: excerpt(
    'Getz, Best, Melathopoulos & Warren',
    2024,
    'Osmia cornuta established in British Columbia',
    'Environmental Entomology 53:1147-1156; title as we word it',
  ),
  lecroy2020: excerpt(
    'LeCroy, Savoy-Burke, Carr, Delaney & Roulston',
    2020,
    'Decline of six native mason bee species following the arrival of an exotic congener',
    'Scientific Reports 10:18745',
  ),
  macivor2022: excerpt(
    'MacIvor and others',
    2022,
    'Two introduced mason bees in Canada',
    'PeerJ e14216; title as we word it',
  ),
  scalici2023: excerpt(
    'Scalici, McCabe, Alston, Peterson, Yost & Pitts-Singer',
    2023,
    'Dispersal and nesting of two strains of Osmia lignaria released in cherry',
    'Environmental Entomology 52:681-691; title as we word it',
  ),

  // When crops bloom
  luedeling2024: {
    authors: 'Luedeling, Caspersen, Delgado Delgado and others',
    year: 2024,
    title: 'Long-term phenology observations for temperate fruit trees in the Mediterranean region (and Germany)',
    where: 'bonndata, doi:10.60507/FK2/MZIELI; statistics computed by us',
    seen: 'read',
  },
  brogdale2009: excerpt(
    'National Fruit Collection, Brogdale',
    2009,
    'Blossom records, Kent, 2009 to 2023 (10 % open, full, 90 % petal fall)',
    'published seasonal lists',
  ),
  brogdale2024: excerpt(
    'National Fruit Collection, Brogdale',
    2024,
    'Blossom report, 8 April to 6 May 2024',
    'web page',
  ),
  coastalBlossom2020: excerpt(
    'Horticulture page, coastal British Columbia',
    2020,
    'Bud stages and bloom times, spring 2020 (order only)',
    'web page',
  ),
  fox2016: excerpt('Conservation group, Minnesota', 2016, 'Serviceberry in bloom', 'web page'),
  frier2016: excerpt(
    'Frier, Somers & Sheffield',
    2016,
    'Comparing the performance of native and managed pollinators of haskap',
    'Agriculture, Ecosystems & Environment 219:42-48',
  ),
  haskapNotes2021: excerpt('Growers in two states', 2021, 'Notes on haskap bloom', 'web pages'),
  honeyberryOregon2009: excerpt('A grower in Oregon', 2009, 'Bloom of honeyberry and haskap', 'fruit mailing list'),
  kaiser2014: excerpt('Kaiser, Coop & Meland', 2014, 'Sweet cherry flowering', 'ASHS conference abstract'),
  leelanau2015: excerpt('County newspaper, Michigan', 2015, 'Tart cherry after sweet cherry', '7 May 2015'),
  michiganReports2011: excerpt(
    'MSU Extension',
    2011,
    'Weekly fruit reports, south-west Michigan, 2011 and 2014',
    'quoted in the press',
  ),
  msuCherry: excerpt('MSU Extension', null, 'Cherry pollination', 'web page'),
  okanagan: excerpt('Visitor bulletin, Kelowna', null, 'Blossom dates of the Okanagan by fruit', 'web page'),
  oregonBlueberry: excerpt(
    'Field notes, western Oregon',
    2013,
    'Blueberry bloom by cultivar, 2013 and 2022',
    'newsletters',
  ),
  oregonWildflowers2016: excerpt('Wildflower diary, western Oregon', 2016, 'First flowers, 6 March 2016', 'web page'),
  skagit2017: excerpt(
    'Market report, Skagit and Puyallup',
    2017,
    'Raspberry and blackberry bloom, 6 June 2017',
    'web page',
  ),
  southwestWashington2017: excerpt(
    'Orchard diary, south-west Washington',
    2017,
    'Bloom by species, 16 April 2017',
    'web page',
  ),
  vermont2013: excerpt('Farm journal, northern Vermont', 2013, 'Bloom by species about 18 May 2013', 'web page'),
  wenatchee2014: excerpt(
    'Washington State University, quoted in newspapers',
    2014,
    "Full bloom of 'Red Delicious' at Wenatchee, 84 years",
    'newspaper reports 2011 to 2019',
  ),
  wisconsinCranberry2023: excerpt('Farm newspaper, Wisconsin', 2023, 'Cranberry bloom', '18 July 2023'),

  // Heat, chill and frost
  anderson1986: excerpt(
    'Anderson, Richardson & Kesner',
    1986,
    "Validation of chill unit and flower bud phenology models for 'Montmorency' sour cherry",
    'Acta Horticulturae 184:71-78',
  ),
  erez1990: excerpt(
    'Erez, Fishman, Linsley-Noakes & Allan',
    1990,
    'The dynamic model for rest completion in peach buds',
    'Acta Horticulturae 276:165-174',
  ),
  davisChill: excerpt(
    'University of California, Davis',
    null,
    'Tree phenology: chill requirements in chill portions, from several studies',
    'web page',
  ),
  intermountain: excerpt(
    'Intermountain fruit pages',
    null,
    'Cherry and pear stages with temperatures that kill 10 and 90 %',
    'web page',
  ),
  longstroth: excerpt(
    'Longstroth',
    null,
    'Critical spring temperatures for tree fruit bud development stages',
    'Michigan State University Extension, after Washington State University bulletins',
  ),
  nevadaBerries: excerpt('University of Nevada Extension', null, 'Berries 101: chilling hours', 'slides'),
  linvill1990: excerpt(
    'Linvill',
    1990,
    'Calculating chilling hours and chill units from daily maximum and minimum temperature observations',
    'HortScience 25:14-16',
  ),
  richardson1974: excerpt(
    'Richardson, Seeley & Walker',
    1974,
    "A model for estimating the completion of rest for 'Redhaven' and 'Elberta' peach trees",
    'HortScience 9:331-332',
  ),

  // Flowers, spacing, set
  almondBloom2020: excerpt(
    'UC Cooperative Extension',
    2020,
    'Almond bloom considerations (flowers per tree, set)',
    'web page',
  ),
  andrikopoulos2018: excerpt(
    'Andrikopoulos & Cane',
    2018,
    'Comparative pollination efficacies of five bee species on raspberry; two visits suffice',
    'HortScience',
  ),
  austin1996: excerpt(
    'Austin and others',
    1996,
    "Cross-pollination of 'Sundrop' apricot by honeybees",
    'New Zealand Journal of Crop and Horticultural Science 24:287-294',
  ),
  bilinski2004: excerpt(
    'Biliński & Teper',
    2004,
    'Rearing and utilization of the red mason bee for orchard pollination',
    'Journal of Apicultural Science 48:69-74',
  ),
  cane2005: excerpt(
    'Cane',
    2005,
    'Pollination potential of the bee Osmia aglaia for cultivated red raspberries and blackberries',
    'HortScience 40:1705-1708',
  ),
  caneFruitWashington: excerpt('Farm centre, north-west Washington', null, 'Growing cane fruit', 'web page'),
  clements2017: excerpt('Clements', 2017, 'Precision thinning of dwarf apple', 'UMass Extension'),
  delaware: excerpt(
    'University of Delaware Extension',
    null,
    'Strawberry and blueberry pollination',
    'Weekly Crop Update',
  ),
  eeraerts2019: excerpt(
    'Eeraerts, Vanderhaegen, Smagghe & Meeus',
    2019,
    'Pollination efficiency and foraging behaviour of honey bees and non-Apis bees to sweet cherry',
    'Agricultural and Forest Entomology',
  ),
  free1964: excerpt(
    'Free & Spencer-Booth',
    1964,
    'The effect of distance from pollinizer varieties on the fruit set of apple, pear and sweet-cherry trees',
    'Journal of Horticultural Science',
  ),
  galaPollinizers: excerpt(
    'Authors not shown',
    null,
    "Pollinizer density around 'Gala' apple, north-west Italy",
    'abstract',
  ),
  horth2018: excerpt(
    'Horth & Campbell',
    2018,
    'Mason bees and strawberry size',
    'Journal of Applied Ecology; title as we word it',
  ),
  langridge1973: excerpt('Langridge & Goodman', 1973, 'Honeybee pollination of sweet cherry', 'as quoted in a review'),
  murray2011: excerpt(
    'Murray',
    2011,
    'Critical temperatures for frost damage on fruit trees',
    'Utah Pests Fact Sheet IPM-012-11',
  ),
  nunez2008: excerpt(
    'Núñez-Elisea, Cahn, Caldeira & Azarenko',
    2008,
    "Pollinizer distance affects crop load of young 'Regina' sweet cherry trees",
    'Acta Horticulturae 795',
  ),
  osterman2023: excerpt(
    'Osterman and others',
    2023,
    'Mason bees and honey bees synergistically enhance fruit set in sweet cherry orchards',
    'abstract; data in Dryad 10.5061/dryad.3xsj3txn0',
  ),
  palmerJones1967: excerpt(
    'Palmer-Jones & Clinch',
    1967,
    'Observations on the pollination of apple trees',
    'New Zealand Journal of Agricultural Research 10:143-149',
  ),
  pinilla2018: excerpt(
    'Pinilla-Gallego & Isaacs',
    2018,
    'Pollen use by Osmia lignaria in highbush blueberry fields',
    'Annals of the Entomological Society of America 111:335-340',
  ),
  plumVisits2016: excerpt('Grower journal, Australia', 2016, 'Honeybee visits and set of plum', 'December 2016, p. 15'),
  spacingMaine: excerpt('University of Maine Extension', null, 'Spacing trees in an orchard', 'web page'),
} as const satisfies Record<string, Source>

export type SourceKey = keyof typeof sources

/** A source in short, as in running text: "Bosch & Kemp 2001". */
export function citation(key: SourceKey): string {
  const { authors, year } = sources[key]
  return year === null ? authors : `${authors} ${year}`
}
