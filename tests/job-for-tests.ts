import type { Job } from '../src-main/domain/job.ts'

/** A bedroom whose old radiator gives way to a bigger one: people, places and sizes are invented. */
export function bedroomJob(changes: Partial<Job> = {}): Job {
  return {
    format: 'tailpiece.job',
    version: 1,
    jobId: 'bedroom-1',
    title: 'Back bedroom radiator',
    createdOn: '2026-03-02',
    customer: { name: 'Test Customer', addressLines: ['1 Example Row', 'Sampleton'], phone: '01632 960001' },
    site: { addressLines: ['1 Example Row', 'Sampleton'], travelKm: 12, upperFloors: 1 },
    survey: {
      surveyedOn: '2026-03-01',
      outsideC: -3,
      system: {
        flowC: 55,
        returnC: 45,
        kind: 'sealed',
        contentLitres: 90,
        drain: 'wholeSystem',
        flush: false,
      },
      builtYear: 1962,
    },
    rooms: [
      {
        roomId: 'bedroom',
        name: 'Back bedroom',
        use: 'bedroom',
        roomC: 18,
        storey: 1,
        floor: 'carpet',
        heat: { volumeM3: 28.8, roughWPerM3: 35 },
        walls: [
          {
            wallId: 'window-wall',
            name: 'Window wall',
            widthMm: 3200,
            heightMm: 2400,
            build: 'solidMasonry',
            finish: 'paint',
            skirtingHeightMm: 120,
            obstacles: [
              {
                obstacleId: 'window',
                name: 'Window',
                kind: 'window',
                xMm: 800,
                yMm: 950,
                widthMm: 1500,
                heightMm: 1100,
              },
            ],
          },
        ],
      },
    ],
    swaps: [
      {
        swapId: 'swap-1',
        roomId: 'bedroom',
        wallId: 'window-wall',
        existing: {
          name: 'Old single panel',
          widthMm: 1000,
          heightMm: 600,
          ratedW: 900,
          dryKg: 14,
          brackets: 2,
        },
        pipes: [
          { side: 'left', xMm: 1020, from: 'floor', material: 'copper', outsideMm: 15, carries: 'flow' },
          { side: 'right', xMm: 2080, from: 'floor', material: 'copper', outsideMm: 15, carries: 'return' },
        ],
        emitterId: 'test-panel-600x1000',
        valves: { kind: 'thermostaticAndLockshield', finish: 'white' },
        centre: { kind: 'betweenPipes' },
        bottomMm: 150,
      },
    ],
    ...changes,
  }
}
