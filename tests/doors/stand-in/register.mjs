// node --import ./register.mjs out/main/electron.js: whoever imports electron gets the stand-in.
import { registerHooks } from 'node:module'

const standIn = new URL('./electron.ts', import.meta.url).href

registerHooks({
  resolve(specifier, context, next) {
    return specifier === 'electron' ? next(standIn, context) : next(specifier, context)
  },
})
