import { z } from 'zod'

/** An object in which an unknown key is an error, and which nobody changes afterwards. */
export const record = <S extends z.ZodRawShape>(shape: S) => z.strictObject(shape).readonly()

export const list = <T extends z.ZodType>(item: T, most = 10_000, least = 0) =>
  z.array(item).min(least).max(most).readonly()

const textOf = (least: number, most: number) => z.string().trim().min(least).max(most)
/** Something a person wrote: a name, a line of an address. */
export const line = textOf(1, 200)
export const optionalLine = textOf(0, 200)
export const note = textOf(0, 5000)
/** A name by which the program knows something. Kept as text: 00126 stays 00126. */
export const key = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$/)

/** A calendar day as YYYY-MM-DD. */
export const day = z.iso.date()

/** A size on a wall or of a thing, in millimetres. */
export const sizeMm = z.number().gt(0).lte(20_000)
/** A distance that may be nothing, in millimetres. */
export const distanceMm = z.number().gte(0).lte(20_000)
/** A place on a wall, in millimetres; it may lie off the wall's left end. */
export const placeMm = z.number().gte(-20_000).lte(20_000)
export const areaM2 = z.number().gt(0).lte(10_000)
export const volumeM3 = z.number().gt(0).lte(100_000)
/** Heat, in watts. */
export const heatW = z.number().gt(0).lte(1_000_000)
export const temperatureC = z.number().gte(-60).lte(130)
export const ratio = z.number().gte(0).lte(1)
export const massKg = z.number().gte(0).lte(2000)
export const litres = z.number().gte(0).lte(100_000)
export const count = z.int().gte(0).lte(100_000)
/** Money in minor units (pence): whole numbers only. */
export const pence = z.int().gte(-1_000_000_000_00).lte(1_000_000_000_00)
export const pricePence = z.int().gte(0).lte(1_000_000_00)
/** Hundredths of a percent: 2000 is 20 %. */
export const basisPoints = z.int().gte(0).lte(100_000)
