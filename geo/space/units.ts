/** Sizes of other units in metric ones; all of them exact by definition. */

/** Metres. */
export const foot = 0.3048
/** Metres. */
export const mile = 1609.344
/** Millimetres. */
export const inch = 25.4
/** Square metres. */
export const acre = 4046.8564224
/** Square metres. */
export const hectare = 10_000
/** Metres per second. */
export const mileAnHour = 0.44704
