import { z } from 'zod'

/**
 * The JSON Schema of what a schema takes in, or of what it gives out. That our values are not changed afterwards is a
 * matter of ours: `readOnly` would tell other programs not to send them, so it is left out.
 */
export function jsonSchemaOf(schema: z.ZodType, io: 'input' | 'output'): Record<string, unknown> {
  return z.toJSONSchema(schema, {
    io,
    override: ({ jsonSchema }) => {
      delete jsonSchema.readOnly
    },
  })
}
