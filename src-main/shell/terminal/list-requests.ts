import { z } from 'zod'
import { requests } from '../../contract/requests.ts'

/** Every request there is, with the JSON Schemas of what goes in and what comes out. */
export function listRequests() {
  return {
    requests: Object.values(requests).map(({ name, doc, kind, needs, input, output }) => ({
      name,
      doc,
      kind,
      needs,
      input: z.toJSONSchema(input, { io: 'input' }),
      output: z.toJSONSchema(output, { io: 'output' }),
    })),
  }
}
