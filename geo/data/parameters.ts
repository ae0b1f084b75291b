import { assumed, figure } from './figure'
import type { BloomRegion } from './own'
import type { Parameter } from './parameter'

export const siteParameterNames = [
  'backgroundBlossom',
  'referenceCropShare',
  'spareTubes',
  'typicalFlyingHours',
] as const
export type SiteParameterName = (typeof siteParameterNames)[number]

/** Figures of the site rather than of a bee or a crop; `plan.parameters` may override each. */
export const siteParameters: Readonly<Record<SiteParameterName, Parameter>> = {
  backgroundBlossom: assumed(
    'flowers/m2',
    [0.5, 3, 15],
    'Open flowers that nobody drew, averaged over all ground in reach. No count fits every place: mown grass and bare soil ' +
      'hold under one flower a square metre, a weedy spring sward ten or more; 3 is a thirtieth of a dwarf apple block in full bloom.',
  ),
  referenceCropShare: figure(
    'share',
    [0.6, 0.85, 0.95],
    'derived',
    ['marquez1994', 'magnin2025', 'mccabe2024'],
    'Share of her work that a bee gave the crop where published stocking rates come from. Pollen loads of O. cornuta held 94 % pear, ' +
      '92-94 % apple and 78-99 % almond; O. lignaria keeps mainly to the orchard. Taken a little lower, since trials stand in full bloom.',
  ),
  spareTubes: assumed(
    'share',
    [0, 0.1, 0.3],
    'Tubes over the number that nesting females are counted to want, for split, wet or wrongly bored ones. ' +
      'The tubes per female already leave about a quarter empty at the end of the season.',
  ),
  typicalFlyingHours: assumed(
    'h',
    [4, 6, 9],
    "A typical spring day's flying time in hours of full work, by which a day's own hours are divided. A dry day of 13.7 hours from 6 " +
      'to 15 degC comes to 6.2 for thresholds of 12 and 15 degC and to 9.0 for 10 and 14; rain and wind take a fifth or so.',
  ),
}

/**
 * Day of the year on which apple (the median of its cultivars) stands in full bloom, by region: the hinge of all bloom defaults.
 * The range is mostly weather: a whole month separates the earliest year from the latest.
 */
export const appleFullBloom: Readonly<Record<BloomRegion, Parameter>> = {
  'maritime-northwest': figure(
    'd',
    [95, 115, 132],
    'assumed',
    ['southwestWashington2017', 'memory'],
    'About 25 April. On 16 April 2017 apples near the lower Columbia were still closed; the rest is from memory.',
  ),
  continental: figure(
    'd',
    [108, 129, 145],
    'derived',
    ['okanagan', 'wenatchee2014', 'vermont2013', 'michiganReports2011'],
    'About 9 May, between a mean of 27 April at Wenatchee, 11 May in south-west Michigan (2011), 5-20 May in the Okanagan and ' +
      'after 18 May in northern Vermont (2013).',
  ),
  'southern-england': figure(
    'd',
    [105, 117, 135],
    'derived',
    ['brogdale2009', 'brogdale2024'],
    'About 27 April. At Brogdale most apples stood full in the week of 22 April 2024; in 2009 from 13 April, the late ones into May.',
  ),
}
