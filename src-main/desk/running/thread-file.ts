/**
 * Where a thread's program lies: beside this file as it is written, and among the bundles once it is built. The bundler must not
 * see a path here, or it would take the file for a picture and move it.
 */
export function threadFile(name: string): URL {
  const here = import.meta.url
  const isWritten = here.endsWith('.ts')
  const inChunks = here.includes('/chunks/')
  const path = isWritten ? `./${name}.ts` : `${inChunks ? '../' : './'}${name}.js`
  return new URL(path, here)
}
