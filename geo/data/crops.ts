import type { CropRecord, ForageRecord } from './crop-record'
import { treeCrops } from './tree-crops'

/** The fruit crops, by id. */
export const crops: Readonly<Record<string, CropRecord>> = { ...treeCrops }

/** Plants that feed the bees beside the crops, by id. */
export const forages: Readonly<Record<string, ForageRecord>> = {}
