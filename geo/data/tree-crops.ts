import { type CropRecord, cropRecord, offsets } from './crop-record'
import { assumed, figure } from './figure'

const averageAppeal = assumed(
  '1',
  [0.7, 1, 1.3],
  'Average by default: no measured rank of fruit blossom for mason bees was found.',
)

const apple = cropRecord({
  id: 'apple',
  name: 'Apple',
  botanicalName: 'Malus domestica',
  kind: 'tree',
  size: 'dwarf tree',
  figures: {
    stockingRate: figure(
      'females/ha',
      [250, 600, 1000],
      'derived',
      ['mader2010', 'boschKemp2001', 'vicens2000', 'schindler2011', 'cornifronsKorea'],
      'Between 530 nesting O. cornuta per hectare that sufficed, 618 to 741 O. lignaria females (250 to 300 an acre) and 600 to 1,000 females set out, about half of which nest.',
    ),
    appeal: averageAppeal,
    spacing: figure(
      'm',
      [0.9, 1.8, 2.4],
      'measured',
      ['spacingMaine', 'clements2017'],
      'Dwarf trees 1.8 to 2.4 m apart, tall spindles 0.9 m.',
    ),
    rowSpacing: figure('m', [3, 3.7, 4.3], 'assumed', 'memory', 'Room for a small mower or tractor.'),
    firstToFull: figure(
      'd',
      [3, 4, 6],
      'measured',
      'luedeling2024',
      'Median of 317 cultivar-years in the Rhineland, from a twentieth of flowers open to full; the range is ours.',
    ),
    fullToEnd: figure(
      'd',
      [4, 8, 14],
      'measured',
      'luedeling2024',
      'Median of 317 cultivar-years in the Rhineland; the range follows that of the whole bloom.',
    ),
  },
  flowers: figure(
    'flowers/plant',
    [250, 600, 1500],
    'derived',
    ['clements2017', 'assumed'],
    'Fifty fruits on a tall spindle were about a tenth of its flowers, so 500; a little more for a wider tree. A standard tree carries some 30,000 (Palmer-Jones & Clinch 1967).',
  ),
  bloomOffset: offsets(
    { 'maritime-northwest': [-10, 0, 10], continental: [-7, 0, 7], 'southern-england': [-11, 0, 15] },
    'derived',
    ['luedeling2024', 'brogdale2009'],
    'Zero by definition; the range is that of cultivars, most of which lie within three days of the middle.',
  ),
  bloomDays: figure(
    'd',
    [7, 12, 20],
    'measured',
    'luedeling2024',
    'Median, 10th and 90th percentile of 317 cultivar-years in the Rhineland; shorter when warm.',
  ),
  femalesPerPlant: figure(
    'females/plant',
    [1, 2.5, 3],
    'assumed',
    ['memory', 'vicens2000'],
    'Two or three per mature standard tree, widely repeated. From flowers visited in a life, 1.8 for a tree of 20,000 flowers and 0.3 for a dwarf.',
  ),
  shareOfFlowersThatMustSet: figure(
    'share',
    [0.05, 0.08, 0.12],
    'derived',
    ['murray2011', 'memory'],
    'Ten to fifteen per cent of buds alive still give a full crop.',
  ),
  selfFertility: 'Needs pollen of another cultivar; triploid cultivars give hardly any.',
  pollinizer: { needsAnother: true, goodWithin: 15, atMost: 30 },
  note: 'The crop with the best-founded stocking rate.',
  sources: ['galaPollinizers', 'free1964', 'palmerJones1967'],
})

export const treeCrops: Readonly<Record<string, CropRecord>> = { apple }
