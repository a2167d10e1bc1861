// Does something while no other process does it: a file with the process's number stands for the right to.
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'

const pauseMs = 200

/** Waits until the lock is free, takes it, does `work`, and gives it back. */
export async function alone(lock, work) {
  mkdirSync(dirname(lock), { recursive: true })
  const mine = `${lock}-${process.pid}`
  writeFileSync(mine, String(process.pid))
  try {
    while (!(await took(lock, mine))) await wait(pauseMs)
    return await work()
  } finally {
    if (holderOf(lock) === process.pid) rmSync(lock, { force: true })
    rmSync(mine, { force: true })
  }
}

async function took(lock, mine) {
  try {
    linkSync(mine, lock)
    return true
  } catch (error) {
    if (error.code !== 'EEXIST') throw error
  }
  const holder = holderOf(lock)
  if (holder === null || isAlive(holder)) return false
  // The holder died without giving it back. Of several that put themselves in its place, the last one has it.
  renameSync(mine, lock)
  await wait(pauseMs)
  if (holderOf(lock) === process.pid) return true
  writeFileSync(mine, String(process.pid))
  return false
}

/** The process that holds the lock; null when nobody does. */
function holderOf(lock) {
  try {
    return Number(readFileSync(lock, 'utf8'))
  } catch (error) {
    if (error.code === 'ENOENT') return null
    throw error
  }
}

function isAlive(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}
