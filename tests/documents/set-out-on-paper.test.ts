import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { setOutPdf } from '../../src-main/desk/papers/set-out-pdf.ts'
import { workForPaper } from '../../src-main/desk/papers/work-for-paper.ts'
import type { Desk } from '../../src-main/desk/desk.ts'
import { job as jobSchema } from '../../src-main/domain/job.ts'
import type { Job } from '../../src-main/domain/job.ts'
import type { Obstacle, Wall } from '../../src-main/domain/wall.ts'
import { answered } from '../answered.ts'
import { bedroomJob } from '../job-for-tests.ts'
import { readPdf } from './read-pdf.ts'
import { drawnPaths } from './set-out-paths.ts'
import type { DrawnPath } from './set-out-paths.ts'

/** One millimetre in points: an inch is 25.4 mm (exact, by definition) and 72 points (ISO 32000-1, 8.3.2.3). */
const ptPerMm = 72 / 25.4

let folder = ''
let desk: Desk
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'tailpiece-set-out-'))
  const now = () => '2026-11-25T19:00:00Z'
  desk = {
    today: '2026-11-25',
    now,
    store: null,
    dataFolder: null,
    papersFolder: folder,
    mayChoosePath: true,
  }
})
afterAll(() => {
  rmSync(folder, { recursive: true, force: true })
})

type Changes = {
  readonly wall?: Partial<Wall>
  readonly swap?: Partial<Job['swaps'][number]>
  readonly room?: Partial<Job['rooms'][number]>
  readonly job?: Partial<Job>
}

function jobWith({ wall, swap, room, job }: Changes): Job {
  const base = bedroomJob()
  return jobSchema.parse({
    ...base,
    ...job,
    rooms: base.rooms.map((one) => ({
      ...one,
      ...room,
      walls: one.walls.map((its) => ({ ...its, ...wall })),
    })),
    swaps: base.swaps.map((one) => ({ ...one, ...swap })),
  })
}

const floorPipe = (side: 'left' | 'right', xMm: number) =>
  ({ side, xMm, from: 'floor', material: 'copper', outsideMm: 15, carries: 'flow' }) as const

const wallFull = crowded(8)

const cases: Readonly<Record<string, Changes>> = {
  'a towel rail on pipes from the floor, on tiles': {
    wall: {
      finish: 'tile',
      tiles: { widthMm: 250, heightMm: 400, jointMm: 3, xMm: 10, yMm: 5 },
      obstacles: [],
    },
    room: { use: 'bathroom', name: 'Bathroom' },
    swap: {
      emitterId: 'rail-straight-chrome-400x1200',
      bottomMm: 300,
      pipes: [floorPipe('left', 1270), floorPipe('right', 1725)],
    },
  },
  'a column radiator with a pipe from the wall': {
    swap: {
      emitterId: 'column-4-600x460',
      pipes: [floorPipe('left', 1120), { ...floorPipe('right', 2000), from: 'wall', yMm: 120, offWallMm: 0 }],
    },
  },
  'a long panel on three brackets': {
    wall: { widthMm: 5200 },
    swap: {
      emitterId: 'panel-double-finned-600x2000',
      pipes: [floorPipe('left', 900), floorPipe('right', 4100)],
      centre: { kind: 'middleOfWall' },
    },
  },
  'a wall full of things': wallFull,
}

function crowded(count: number): Changes {
  const kinds = ['socket', 'switch', 'cable', 'pipeInWall'] as const
  const obstacles = Array.from({ length: count }, (_, nth): Obstacle => {
    const kind = kinds[nth % 4] ?? 'socket'
    const isHidden = kind === 'cable' || kind === 'pipeInWall'
    return {
      obstacleId: `obstacle-${nth}`,
      name: `The ${nth}th thing that someone put on this wall and gave a long name`,
      kind,
      xMm: 300 + (4500 / count) * nth,
      yMm: kind === 'switch' ? 1200 : 300,
      widthMm: isHidden ? 20 : 140,
      heightMm: isHidden ? 1800 : 90,
    }
  })
  return {
    wall: {
      name: 'The long wall between the back bedroom and the bathroom',
      widthMm: 5200,
      build: 'boardOnStuds',
      finish: 'tile',
      boardMm: 12.5,
      thicknessMm: 75,
      studs: { firstMm: 200, spacingMm: 400, widthMm: 38 },
      tiles: { widthMm: 250, heightMm: 400, jointMm: 3, xMm: 10, yMm: 5 },
      obstacles,
    },
    room: { use: 'bathroom', name: 'Bathroom on the second floor at the back of the house' },
    swap: {
      emitterId: 'panel-double-finned-600x1800',
      pipes: [floorPipe('left', 900), floorPipe('right', 4100)],
      centre: { kind: 'middleOfWall' },
    },
  }
}

/** Each job is printed once, for all that is asked of its sheet. */
const papers = new Map<Changes, ReturnType<typeof printed>>()

function onPaper(changes: Changes): ReturnType<typeof printed> {
  const paper = papers.get(changes) ?? printed(changes)
  papers.set(changes, paper)
  return paper
}

async function printed(changes: Changes) {
  const job = jobWith(changes)
  const [swap] = job.swaps
  const [wall] = job.rooms[0]?.walls ?? []
  const setOut = answered(await workForPaper({ job }, desk)).setOuts[swap?.swapId ?? '']
  if (wall === undefined || setOut === undefined) throw new Error('The job has a wall and a swap')
  const { path } = answered(await setOutPdf({ job }, desk))
  const bytes = new Uint8Array(readFileSync(path))
  const read = await readPdf(bytes)
  return { wall, setOut, bytes, ...read, paths: await drawnPaths(bytes, 1) }
}

const middleX = ({ left, right }: DrawnPath) => (left + right) / 2
const middleY = ({ low, high }: DrawnPath) => (low + high) / 2
const widthOf = ({ left, right }: DrawnPath) => right - left
const heightOf = ({ low, high }: DrawnPath) => high - low

/** The centre line: the only chain line. */
function centreLine(paths: readonly DrawnPath[]): DrawnPath {
  const [longest] = paths
    .filter(({ dash }) => dash.length === 4)
    .toSorted((one, other) => heightOf(other) - heightOf(one))
  if (longest === undefined) throw new Error('A drawing has a centre line')
  return longest
}

describe('a set-out sheet printed from the job', { timeout: 120_000 }, () => {
  it.each(Object.entries(cases))('is one page true to the scale it states: %s', async (_, changes) => {
    const { wall, setOut, pages, text, paths } = await onPaper(changes)
    expect(pages).toHaveLength(1)
    const [, part, stated] = /(Scale|Part of the wall,) 1:(\d+)\./.exec(text) ?? []
    const ptPerWallMm = ptPerMm / Number(stated)
    const centre = centreLine(paths)
    // The emitter's outline is drawn about the centre line; the foot of the centre line is the floor.
    for (const hole of setOut.holes) {
      const x = middleX(centre) + hole.fromCentreMm * ptPerWallMm
      const y = centre.low + hole.yMm * ptPerWallMm
      const rings = paths.filter(({ curves }) => curves > 1)
      const away = rings.map((ring) => Math.hypot(middleX(ring) - x, middleY(ring) - y))
      // Coordinates in the picture are written to 0.01 mm of wall; a twentieth of a point is 0.02 mm of paper.
      expect(Math.min(...away)).toBeLessThan(0.05)
    }
    const outlines = paths.filter(
      (path) => Math.abs(widthOf(path) - wall.widthMm * ptPerWallMm) < 0.05 && path.curves === 0,
    )
    if (part === 'Scale') {
      const [outline] = outlines.filter(
        (path) => Math.abs(heightOf(path) - wall.heightMm * ptPerWallMm) < 0.05,
      )
      expect(outline).toBeDefined()
      expect(middleX(centre) - (outline?.left ?? 0)).toBeCloseTo(setOut.centreMm * ptPerWallMm, 1)
      expect(outline?.low).toBeCloseTo(centre.low, 1)
    }
    const bar = paths.filter((path) => Math.abs(widthOf(path) - 30 * ptPerMm) < 1.1 && heightOf(path) > 9)
    expect(bar).toHaveLength(1)
  })

  it('draws in black and white alone, what is hidden, a stud and the centre line told apart by their dashes', async () => {
    const { paths } = await onPaper(wallFull)
    expect(new Set(paths.map(({ colour }) => colour))).toEqual(new Set(['#000000', '#ffffff']))
    const shapes = new Set(
      paths
        .filter(({ dash }) => dash.length > 0)
        .map(({ dash }) => dash.map((one) => Math.round((one / (dash[0] ?? 1)) * 10) / 10).join(' ')),
    )
    // 5 1 1 1, 2 1.2 and 1 1 in parts of the first dash.
    expect(shapes).toEqual(new Set(['1 0.2 0.2 0.2', '1 0.6', '1 1']))
  })

  it('prints no letter under 11 points on the sheet', async () => {
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs')
    for (const changes of Object.values(cases)) {
      const { bytes } = await onPaper(changes)
      const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 })
      const { items } = await (await (await loading.promise).getPage(1)).getTextContent()
      await loading.destroy()
      const sizes = items.flatMap((item) =>
        'str' in item && item.str.trim() !== '' ? [Math.abs(Number(item.transform[3]))] : [],
      )
      expect(Math.min(...sizes)).toBeGreaterThan(10.95)
    }
  })

  it('says the same as the set-out: every hole, the centre line, plug and pipes', async () => {
    for (const changes of Object.values(cases)) {
      const { setOut, pages, text, told } = await onPaper(changes)
      for (const { id, fromCentreMm, xMm, yMm, drillMm, depthMm } of setOut.holes) {
        const across =
          fromCentreMm === 0 ? 'on it' : `${Math.abs(fromCentreMm)} ${fromCentreMm < 0 ? 'left' : 'right'}`
        expect(
          pages[0]?.some((row) => row.startsWith(`${id} ${across} ${yMm} ${xMm} ${drillMm} ${depthMm}`)),
        ).toBe(true)
      }
      expect(text).toMatch(new RegExp(`^Centre line ${setOut.centreMm}\\b`, 'm'))
      expect(told).toContain(
        `Carries ${Math.round(100 * Math.max(setOut.fixing.load.shearUse, setOut.fixing.load.pullUse))}% of what it may.`,
      )
      expect(told).toContain('Left pipe: Cut and re-pipe.')
      expect(told).toContain('Right pipe: Cut and re-pipe.')
    }
  })

  it('is still one page on a wall of forty things with names as long as they may be', async () => {
    const long = (text: string) => `${text} `.repeat(60).slice(0, 199).trim()
    const changes = crowded(40)
    const { pages, told } = await onPaper({
      ...changes,
      wall: {
        ...changes.wall,
        name: long('wall'),
        obstacles: (changes.wall?.obstacles ?? []).map((one) => ({ ...one, name: long('thing') })),
      },
      room: { ...changes.room, name: long('room') },
      job: { customer: { name: long('customer'), addressLines: [long('street'), long('town')] } },
    })
    expect(pages).toHaveLength(1)
    expect(told).toMatch(/\d+ more are on the screen: read them before you drill\./)
    expect(told).toContain('Plug, brackets up, check level, hang, then valves and pipes.')
  })
})
