import { z } from 'zod'
import { featureShapes, planMember } from './format'

const known = {
  required: ['properties'],
  properties: {
    properties: { type: 'object', required: ['kind'], properties: { kind: { enum: Object.keys(featureShapes) } } },
  },
}

/** Kept as they are: features of other kinds, and features that have no place. */
const other = z.looseObject({}).meta({
  id: 'other',
  description: 'Kept and written back, but not part of the plan: a feature of another kind, or one without a place',
  anyOf: [{ not: known }, { properties: { geometry: { type: 'null' } } }],
})

/** The shape of a plan file as JSON Schema, for editors and other programs; the reader uses the same definitions. */
export function planFileSchema(): object {
  const file = z.looseObject({
    type: z.literal('FeatureCollection'),
    plan: planMember,
    features: z.array(z.union([...Object.values(featureShapes), other])),
  })
  return {
    title: 'Plan file',
    description: 'A plan of plantings and mason bee nest stations: GeoJSON (RFC 7946) with one member more, `plan`.',
    ...z.toJSONSchema(file, { io: 'input' }),
  }
}
