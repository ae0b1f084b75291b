import { berryCrops } from './berry-crops'
import type { CropRecord, ForageRecord } from './crop-record'
import { foragePlants } from './forage-plants'
import { treeCrops } from './tree-crops'

/** The fruit crops, by id. */
export const crops: Readonly<Record<string, CropRecord>> = { ...treeCrops, ...berryCrops }

/** Plants that feed the bees beside the crops, by id. */
export const forages: Readonly<Record<string, ForageRecord>> = foragePlants
