import { z } from 'zod'
import { derivation } from '../domain/derivation.ts'
import { job, roomUse } from '../domain/job.ts'
import { quickRoomEntry } from '../domain/quick-room.ts'
import { heatElement } from '../domain/room-heat.ts'
import { key, line, list, record, temperatureC } from '../domain/schema.ts'
import { command, query } from './request.ts'

const finite = z.number()

export const roomQuick = query('room.quick', {
  doc: 'Walls, floor and ceiling of a room from a few quick answers and the published tables, ready for heat.load.',
  input: record({ use: roomUse, roomC: temperatureC.optional(), entry: quickRoomEntry }),
  output: record({
    roomC: finite,
    heat: record({
      volumeM3: finite,
      floorAreaM2: finite,
      airChangesPerHour: finite,
      thermalBridgeWPerM2K: finite,
      elements: list(heatElement),
    }),
    why: derivation,
  }),
})

const kept = { photoId: key, bytes: z.int(), widthPx: z.int(), heightPx: z.int() }

/** A photo as it travels in a job file: a JPEG with nothing in it but the picture, in base64. */
export const filePhoto = record({ photoId: key, base64: z.string() })
/** As many as a job can name: 60 in each of 200 rooms. */
export const mostFilePhotos = 12_000

export const photoSave = command('photo.save', {
  doc: 'Keeps a JPEG of a job. One that still says where or when it was taken is refused.',
  needs: 'data',
  input: record({ jobId: key, base64: z.string() }),
  output: record(kept),
})

export const photoRead = query('photo.read', {
  doc: 'The picture of a photo that was kept.',
  needs: 'data',
  input: record({ jobId: key, photoId: key }),
  output: record({ ...kept, base64: z.string() }),
})

export const photoList = query('photo.list', {
  doc: 'The photos that are kept of a job, and how large one may be.',
  needs: 'data',
  input: record({ jobId: key }),
  output: record({ photos: list(record(kept)), mostBytes: z.int(), mostPx: z.int() }),
})

export const photoRemove = command('photo.remove', {
  doc: 'Removes a photo for good.',
  needs: 'data',
  input: record({ jobId: key, photoId: key }),
  output: record({ photoId: key }),
})

export const surveyFormPdf = command('surveyForm.pdf', {
  doc: 'The survey form as a PDF to write on: blank, or with what a job already says.',
  input: record({
    job: job.optional(),
    /** Of a blank form; two when absent. */
    rooms: z.int().gte(1).lte(12).optional(),
    out: line.max(1000).optional(),
  }),
  output: record({ path: z.string(), pages: z.int(), bytes: z.int() }),
})
