/** A name for a job that no other has. */
export function newJobId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(6))
  return `job-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`
}
