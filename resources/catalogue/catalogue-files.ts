import { columnRadiators } from './emitters/columns.ts'
import { panels } from './emitters/panels.ts'
import { towelRails } from './emitters/towel-rails.ts'
import { jsonText } from './json-text.ts'
import { fixings } from './parts/fixings.ts'
import { makingGood } from './parts/making-good.ts'
import { pipeFittings } from './parts/pipe-fittings.ts'
import { pipesAndSupports } from './parts/pipes.ts'
import { threadsAndSeals } from './parts/threads.ts'
import { valves } from './parts/valves.ts'
import { waterAndSundries } from './parts/water-and-sundries.ts'
import { offersOf } from './prices/offers.ts'
import { suppliers } from './prices/suppliers.ts'

const edition = '2026-11'

const emittersMade =
  'Generic emitters worked out by rule, not taken from any list. Panels: rated output is watts for each square metre of face by ' +
  'form at 600 high, falling as the face grows taller, in step with width (from memory); exponent, mass and water of finned ' +
  'panels start from the 300-high records of types 11, 12 and 22 in the AixLib building library, the plain single from the ' +
  'flat-plate default of the IBPSA library (n 1.24 at 420 high), and how they go on with height is from memory. Columns: ' +
  'output a section from memory; mass and water from 25 x 1.2 mm tube in steel of 7800 kg/m3 (EN 12524); n 1.30. Towel rails: ' +
  'output for each square metre of tube, chrome at seven tenths of white (from memory); mass and water from the tubes; n 1.20; ' +
  'pipe centres 50 mm less than the width, brackets 120 mm less, the lowest 95 mm up (practice, no published source); ' +
  'a curved rail is as deep as a straight one, since the curve is added where it is set out. Other sizes, bracket places and box contents from memory. Outputs are to the nearest 5 W, masses to 0.1 kg.'

const partsMade =
  'Generic fittings, fixings and consumables, worked out by rule, not taken from any list. Plug and screw pairing, Kv of ' +
  'valves, loads of board anchors, coverage and sizes made are trade practice from memory; threads are ISO 228, parallel. ' +
  'Allowed loads are cautious: those of the maker of the fixing come first.'

const suppliersMade =
  'Three invented suppliers with invented terms, so that the program has something to buy from.'

const pricesMade =
  'Generic prices in pence before tax, plausible for Great Britain in 2026, from memory: a base price by rule or by row, times ' +
  'a rate for each invented supplier that swings by up to 3 % from item to item. Codes are made from the pack, so that they stay.'

/** The four files of the generic catalogue, by name. */
export function catalogueFiles(): Readonly<Record<string, string>> {
  const emitters = [...panels(), ...columnRadiators(), ...towelRails()]
  const parts = [
    ...valves(),
    ...threadsAndSeals(),
    ...fixings(),
    ...makingGood(),
    ...pipesAndSupports(),
    ...pipeFittings(),
    ...waterAndSundries(),
  ]
  return {
    'emitters.json': jsonText({ made: emittersMade, edition, items: emitters.map(({ item }) => item) }),
    'parts.json': jsonText({ made: partsMade, edition, items: parts.map(({ item }) => item) }),
    'suppliers.json': jsonText({ made: suppliersMade, edition, suppliers }),
    'prices.json': jsonText({ made: pricesMade, edition, prices: offersOf([...emitters, ...parts]) }),
  }
}
