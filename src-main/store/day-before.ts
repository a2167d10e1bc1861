const dayMs = 86_400_000

/** The calendar day before: 2026-03-01 gives 2026-02-28. */
export function dayBefore(day: string): string {
  return daysBefore(day, 1)
}

/** The calendar day so many days before. */
export function daysBefore(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) - days * dayMs).toISOString().slice(0, 10)
}
