import { requests } from '../../contract/requests.ts'
import { jsonSchemaOf } from '../../domain/json-schema.ts'

/** Every request there is, with the JSON Schemas of what goes in and what comes out. */
export function listRequests() {
  return {
    requests: Object.values(requests).map(({ name, doc, kind, needs, input, output }) => ({
      name,
      doc,
      kind,
      needs,
      input: jsonSchemaOf(input, 'input'),
      output: jsonSchemaOf(output, 'output'),
    })),
  }
}
