import type { AnswerOf, InputOf } from '../../contract/requests.ts'
import { because, given } from '../../domain/derivation.ts'
import { figure, figureWhy } from '../../domain/figures.ts'
import type { Item } from '../../domain/item.ts'
import { accept, refuse } from '../../domain/outcome.ts'
import type { Outcome } from '../../domain/outcome.ts'
import { cheapestPurchase } from '../../engine/takeoff/purchase.ts'
import { shelfOf } from '../../engine/takeoff/shelf.ts'
import type { Shelf } from '../../engine/takeoff/shelf.ts'
import { doseInContainers } from '../../engine/water/dose-containers.ts'
import { doseLitres } from '../../engine/water/system-dose.ts'
import { catalogueOf } from '../catalogue-of.ts'
import type { Desk, UseCase } from '../desk.ts'
import { figuresInForce } from '../figures-in-force.ts'

type Input = InputOf<'water.dose'>
type Answer = AnswerOf<'water.dose'>
type Product = Extract<Item, { readonly kind: 'inhibitor' | 'cleaner' }>

const treatedBy = {
  inhibitor: 'water.inhibitorLitresPerLitre',
  cleaner: 'water.cleanerLitresPerLitre',
} as const

export const waterDose: UseCase<'water.dose'> = async (input, desk) => {
  const { itemId } = input
  if (itemId !== undefined) return fromCatalogue({ ...input, itemId }, desk)
  const figures = await figuresInForce(desk, desk.today)
  if (!figures.ok) return figures
  const { product, contentLitres, drainedShare = 1, treatedLitresPerLitre, packs } = input
  const asked = { contentLitres, drainedShare, packs }
  if (treatedLitresPerLitre !== undefined) return doseInContainers({ ...asked, treatedLitresPerLitre })
  return doseInContainers({
    ...asked,
    treatedLitresPerLitre: figure(figures.value, treatedBy[product]),
    treatedWhy: figureWhy(figures.value, treatedBy[product]),
  })
}

/** Litres to a millionth: packs are counted no finer. */
const leastLitres = 1e-6

async function fromCatalogue(
  input: Input & { readonly itemId: string },
  desk: Desk,
): Promise<Outcome<Answer>> {
  if (input.packs !== undefined) {
    return refuse('conflict', 'Give the product by itemId, or its containers as packs, not both.', 'packs')
  }
  const catalogue = await catalogueOf(desk)
  const found = productOf(
    catalogue.items.find((item) => item.itemId === input.itemId),
    input,
  )
  if (!found.ok) return found
  const product = found.value
  const { treatsLitresPerLitre } = product.spec
  const { contentLitres, drainedShare = 1, treatedLitresPerLitre = treatsLitresPerLitre } = input
  const treatedWhy =
    input.treatedLitresPerLitre === undefined
      ? given('Litres that one litre treats', treatsLitresPerLitre, 'L/L', product.name)
      : undefined
  const dose = doseLitres({ contentLitres, drainedShare, treatedLitresPerLitre, treatedWhy })
  if (!dose.ok) return dose
  return bought(product, dose.value, shelfOf(catalogue))
}

function productOf(item: Item | undefined, { product, itemId }: Input): Outcome<Product> {
  const next = 'Look for one with catalogue.search.'
  if (item === undefined) {
    return refuse('not-found', `There is no item ${itemId} in the catalogue.`, 'itemId', next)
  }
  if ((item.kind === 'inhibitor' || item.kind === 'cleaner') && item.kind === product) return accept(item)
  return refuse('invalid', `${item.name} is no ${product}; name one of the catalogue.`, 'itemId', next)
}

type Dose = { readonly litres: number; readonly why: Answer['why'] }

/** Bought as a quote would buy it: whole containers from whoever is cheapest, price breaks counted. */
function bought({ itemId, name }: Product, { litres, why }: Dose, shelf: Shelf): Outcome<Answer> {
  if (litres < leastLitres) {
    return accept({ litres, containers: { picks: [], pence: 0, leftover: 0 }, why })
  }
  const wanted = { lineId: itemId, itemId, name, unit: 'L' as const, need: litres, kerfMm: 0 }
  const purchase = cheapestPurchase(wanted, shelf)
  if (!purchase.ok) {
    return {
      ok: false,
      problems: purchase.problems.map((problem) => ({
        ...problem,
        path: problem.path === 'need' ? 'contentLitres' : 'itemId',
      })),
    }
  }
  const { packs, costPence, leftover, supplierId, supplierName } = purchase.value
  const count = packs.reduce((sum, pack) => sum + pack.count, 0)
  return accept({
    litres,
    containers: {
      picks: packs.map((pack) => ({ id: pack.code, count: pack.count })),
      pence: costPence,
      leftover,
    },
    supplier: { supplierId, name: supplierName },
    why: because('Whole containers that cover the dose', count, {
      from: [why, purchase.value.why, given('Bought from', supplierName)],
    }),
  })
}
