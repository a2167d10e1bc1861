import type { z } from 'zod'
import { unreadableRow } from './sqlite/troubles.ts'

/** What was written as JSON. `what` names the row, for the person who meets damage. */
export function fromJson(text: string, what: string): unknown {
  try {
    return JSON.parse(text)
  } catch (error) {
    throw unreadableRow(what, error)
  }
}

/** A row's value as its schema has it. */
export function readRow<S extends z.ZodType>(schema: S, value: unknown, what: string): z.infer<S> {
  const parsed = schema.safeParse(value)
  if (!parsed.success) throw unreadableRow(what, parsed.error)
  return parsed.data
}

/** A JSON object's fields, to be put together with the fields that have columns. */
export function fieldsOf(text: string, what: string): Record<string, unknown> {
  const value = fromJson(text, what)
  if (typeof value !== 'object' || value === null) throw unreadableRow(what, value)
  return value as Record<string, unknown>
}
