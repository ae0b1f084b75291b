import { thresholds } from '#geo/data/thresholds'
import type { Units } from '#geo/plan/plan'
import { type Caution, type CautionKey, cautionWith } from '#geo/wording/cautions'
import { lengthText } from './units'

/** A caution with its lengths in the plan's units. */
export function cautionIn(key: CautionKey, units: Units): Caution {
  return cautionWith(key, lengthText(thresholds.heightMost.value, units))
}
