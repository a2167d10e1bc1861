import type { Emitter, Item, Part } from '../../domain/item.ts'

/** Goes up when the words change, so that an older file's index is built anew. */
export const wordsEdition = 'words-2'

/**
 * The trade's own words for a thing, by its kind and figures, so that an item of the firm's own is found by them as the
 * generic ones are. One list for all: practice, no published source.
 */
export function tradeWords(item: Item): readonly string[] {
  if (item.kind === 'emitter') return emitterWords(item)
  return [...(kindWords[item.kind] ?? []), ...specWords(item), ...sizeWords(item)]
}

const kindWords: { readonly [K in Part['kind']]?: readonly string[] } = {
  valve: ['radiator valve', 'rad valve'],
  tail: ['extension', 'radiator tail', 'valve extension'],
  vent: ['bleed valve', 'bleed plug', 'air vent'],
  blank: ['blanking plug', 'stop plug', 'radiator plug', 'end plug'],
  plug: ['wall plug', 'masonry plug'],
  anchor: ['plasterboard fixing', 'cavity fixing', 'hollow wall anchor'],
  board: ['pattress board', 'noggin', 'ply strip'],
  pipe: ['tube'],
  clip: ['pipe clip', 'pipe bracket'],
  collar: ['pipe cover', 'floor plate', 'pipe rose'],
  insulation: ['lagging', 'pipe foam'],
  inhibitor: ['corrosion inhibitor', 'dosing'],
  cleaner: ['flushing chemical', 'sludge remover'],
  testKit: ['water test kit', 'dip test'],
  element: ['immersion element', 'dual fuel', 'summer heating', 'electric element'],
}

/** By kind and the value of the figure that tells one from another. */
const valueWords: Readonly<Record<string, readonly string[]>> = {
  'valve thermostatic': ['TRV', 'thermostatic valve', 'thermostatic radiator valve', 'stat valve'],
  'valve lockshield': ['LSV', 'lock shield', 'lockshield valve'],
  'valve manual': ['wheelhead', 'wheel head', 'hand valve'],
  'valve angled': ['angle valve'],
  'seal tape': ['PTFE', 'thread tape', 'plumber tape'],
  'seal hemp': ['flax'],
  'seal paste': ['jointing compound', 'thread paste'],
  'seal anaerobic': ['thread sealant', 'liquid PTFE'],
  'sealant sanitarySilicone': ['silicone', 'bathroom sealant', 'mastic'],
  'sealant acrylic': ['decorators caulk', 'caulk'],
  'filler plaster': ['wall filler', 'plaster filler'],
  'filler tile': ['tile filler', 'grout repair'],
  'paint wallTouchUp': ['emulsion', 'touch up'],
  'pipe copper': ['copper tube'],
  'pipe plastic': ['barrier pipe', 'push-fit pipe'],
  'pipeFitting elbow': ['90 bend', 'bend'],
  'pipeFitting coupler': ['coupling', 'straight connector'],
  'pipeFitting reducer': ['reducing coupler', 'adaptor'],
  'pipeFitting tee': ['T-piece'],
  'pipeFitting stopEnd': ['cap', 'blank end'],
  'pipeFitting insert': ['pipe liner', 'stiffener'],
  'pipeFitting compression': ['comp', 'olive fitting'],
  'pipeFitting endFeed': ['solder fitting', 'soldered'],
  'pipeFitting pushFit': ['push fit'],
  'sundry dustSheet': ['drop sheet'],
  'sundry rubbleSack': ['waste bag', 'builders bag'],
  'sundry ventKey': ['radiator key', 'bleed key'],
  'sundry pipeFreezePack': ['pipe freeze', 'freezing kit'],
  'sundry isolatingCap': ['blanking cap', 'valve cap'],
  'sundry wipes': ['wet wipes', 'site wipes'],
}

function specWords({ kind, spec }: Part): readonly string[] {
  return Object.values(spec).flatMap((value) => valueWords[`${kind} ${String(value)}`] ?? [])
}

const inchWords: Readonly<Record<string, readonly string[]>> = {
  'G1/8': ['1/8 inch', '1/8 BSP'],
  'G1/4': ['1/4 inch', '1/4 BSP'],
  'G3/8': ['3/8 inch', '3/8 BSP'],
  'G1/2': ['1/2 inch', '1/2 BSP'],
  'G3/4': ['3/4 inch', '3/4 BSP'],
}

/** `15mm` for a pipe size; inches for a thread; microbore for the small pipes. */
function sizeWords({ spec }: Part): readonly string[] {
  return Object.entries(spec).flatMap(([field, value]) => {
    if (field === 'thread') return inchWords[String(value)] ?? []
    if (field !== 'pipeMm' && field !== 'outsideMm' && field !== 'toMm') return []
    return [`${String(value)} mm`, ...(value === 8 || value === 10 ? ['microbore'] : [])]
  })
}

/** What fitters call the forms of panel radiators: panels, then fins. */
const panelTypes = {
  single: ['type 10', 'flat single', 'single panel'],
  singleFinned: ['type 11', 'single convector'],
  double: ['type 20', 'double panel'],
  doubleFinned: ['type 21', 'double panel single convector'],
  doubleTwoFins: ['type 22', 'double convector'],
  tripleThreeFins: ['type 33', 'triple convector'],
} as const

function emitterWords({ form, heightMm, widthMm }: Emitter): readonly string[] {
  const size = `${heightMm}x${widthMm}`
  if (form.kind === 'panel') return ['rad', 'radiator', 'panel radiator', ...panelTypes[form.panel], size]
  if (form.kind === 'column')
    return ['rad', 'radiator', 'column radiator', `${form.columns} column`, 'tubular radiator', size]
  return [
    'towel rail',
    'towel radiator',
    'towel rad',
    'towel warmer',
    'ladder rail',
    'heated towel rail',
    size,
  ]
}
