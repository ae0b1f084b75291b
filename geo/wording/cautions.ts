/** A short caution that stands where the risky act is planned, and the longer text behind it. */
export type Caution = { readonly title: string; readonly short: string; readonly long: string }

export type CautionKey =
  | 'general'
  | 'species'
  | 'moving'
  | 'ladder'
  | 'stings'
  | 'sprays'
  | 'public'
  | 'dust'
  | 'cleaning'
  | 'fridge'
  | 'tools'
  | 'water'
  | 'yield'
  | 'privacy'

/** A caution with a height in words where it tells one. */
export function cautionWith(key: CautionKey, height: string): Caution {
  const { title, short, long } = cautions[key]
  const told = (text: string) => text.replaceAll('{height}', height)
  return { title, short: told(short), long: told(long) }
}

/**
 * All cautions. `{height}` stands where the height is told above which most people need a ladder, in the reader's units.
 */
export const cautions: Readonly<Record<CautionKey, Caution>> = {
  general: {
    title: 'Estimates, not advice',
    short: 'All figures are estimates for planning. Local advice, product labels, site rules and the law go first.',
    long: 'The planner works from published averages and from what you draw and type. Bees, weather and ground differ from place to place by more than most of the figures here. Where a local adviser, a product label, your site’s rules or the law say otherwise, do as they say.',
  },
  species: {
    title: 'Only bees at home where you are',
    short: 'Release only bees that are native where you are and lawful to release there.',
    long: 'A bee let go outside its home range can crowd out its relatives and bring their diseases. In some countries it is an offence without a licence. If you are not sure which bee you have, do not pass it on; ask a wildlife or plant-health office.',
  },
  moving: {
    title: 'Moving live bees',
    short: 'Cocoons and used nests carry mites, moulds and strains from elsewhere. Use stock raised near you.',
    long: 'Ask where a lot was raised before you accept it, keep lots apart and write down which went where. Look up national and regional rules before anything alive, or any used nest, crosses a border; where you are not sure, ask a plant-health or wildlife office. Once bees nest at a station, leave it where it is until they have finished: females that cannot find their nest are lost.',
  },
  ladder: {
    title: 'Work at height',
    short: 'Higher than {height} means a ladder for most people. A station at chest height works as well.',
    long: 'Choose heights that can be reached from the ground. If a ladder cannot be avoided, use one made for soft or sloping ground, have someone stand at its foot, and follow your site’s rules. Work higher up is for people who are trained for it.',
  },
  stings: {
    title: 'Stings and allergy',
    short: 'Mason bee females rarely sting, but can when squeezed. Look before you reach: wasps use the same tubes.',
    long: 'Anyone who has reacted badly to a sting should speak with a doctor before helping, and everyone helping should know where help is to be had. Little has been published about reactions to these bees; that is no proof that there are none.',
  },
  sprays: {
    title: 'Sprays',
    short:
      'Nothing here permits or advises a treatment. Keep to the label and the local rules, and ask a licensed adviser.',
    long: 'Bees are at risk while they fly, while they rest in their nests and while they gather mud. In many places the label is the law. Where a treatment cannot be avoided, ask the adviser or a licensed applicator how to spare them. Give your neighbours the dates on which your bees fly, and ask for the dates on which they spray.',
  },
  public: {
    title: 'Children and public places',
    short: 'Keep stations off narrow paths and play areas, and agree who may open them.',
    long: 'Put a name on each station. On shared or public ground ask first who has to agree, and keep to the rules of the place.',
  },
  dust: {
    title: 'Dust and mould',
    short: 'Opened nests give off dust, mites and mould. Open them outdoors, damp, with a dust mask and eye cover on.',
    long: 'Old nests hold dried mud, pollen, droppings, mites and mould, and all of it flies when they are cut open. Work outdoors or where the air moves, damp the nests down first, wear a dust mask that fits closely, and wash hands and clothes afterwards. Whoever has asthma or hay fever, or falls ill easily, should leave this to others.',
  },
  cleaning: {
    title: 'Cleaning agents',
    short: 'Never mix cleaning agents. Weak and fresh, by the label and local advice, with gloves, away from children.',
    long: 'Mixed cleaning agents can give off poisonous gas. Make up no more than you need, as thin as the label and local advice allow, rinse well, and pour nothing into a ditch or pond. Sieving and cold water take off most of what sits on cocoons; whether more is called for, a local adviser knows.',
  },
  fridge: {
    title: 'Cocoons in a fridge',
    short: 'Best is a fridge that holds no food. In a shared one: a closed, vented, labelled box on the lowest shelf.',
    long: 'Tell everyone who uses the fridge what the box holds. Nothing mouldy and nothing that was treated goes in beside food. Cocoons dry out in a fridge that dries its air: a damp cloth in the box helps, looked at every week.',
  },
  tools: {
    title: 'Cutting and drilling',
    short: 'Cutting reeds and drilling blocks hurts people every year. Clamp the work and use the guards.',
    long: 'Hold nothing in the hand that is cut or drilled. Cut away from yourself, cover your eyes, and keep children at a distance while tools run.',
  },
  water: {
    title: 'Open water and mud',
    short: 'Keep mud trays and pits shallow and marked: small children and animals can fall in.',
    long: 'Bees need mud that is wet, not open water. A little clay kept damp does, with a stone or a slope by which an animal gets out. Do not dig or fill a pit where people walk, cover it while nobody needs it, and empty it when the bees have finished.',
  },
  yield: {
    title: 'Coverage is not yield',
    short: 'Enough bees do not make a crop by themselves: frost, pollenizers and weather decide as well.',
    long: 'Coverage says how far the bees wanted and the bees at work agree. Flowers lost to frost, a missing pollenizer in bloom at the same time, cold or wet days, thinning and the tree’s own reserves are outside it. Wild bees and honey bees are outside it too.',
  },
  privacy: {
    title: 'Your plan stays with you',
    short: 'No account; nothing you draw or type is sent anywhere. Plans are kept in this browser, on this device.',
    long: 'A plan file can show where people live, grow and keep stock: share it with thought. If you choose a street map as the ground, its pictures are fetched from the map’s server, which then sees the area you look at, but not your plan. The metre grid fetches nothing.',
  },
}
