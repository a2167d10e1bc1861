/** Screws that go with a backing board; sizes: practice, no published source. */
export const boardScrew = { diameterMm: 5, lengthMm: 30 } as const
export const studScrew = { diameterMm: 5, lengthMm: 70 } as const
