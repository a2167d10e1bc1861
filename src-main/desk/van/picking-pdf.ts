import { pickingDocument } from '../../documents/van/picking-document.ts'
import { pickingView } from '../../documents/van/picking-view.ts'
import { readFirm } from '../../store/firm.ts'
import { reading } from '../../store/store.ts'
import { readPicking } from '../../store/van/pickings.ts'
import type { UseCase } from '../desk.ts'
import { printPdf } from '../papers/print-pdf.ts'
import { printable } from '../papers/printable.ts'
import { paperPath, writePaper } from '../papers/write-paper.ts'
import { storeOf } from '../store-of.ts'
import { noSuchPicking } from './picking-work.ts'

/** A round of picking on paper, with what was ticked off so far. */
export const pickingPdf: UseCase<'picking.pdf'> = async ({ pickingNo, out }, desk) => {
  const where = { out, name: `picking-${pickingNo}` }
  const place = paperPath(where, desk)
  if (!place.ok) return place
  const { picking, firm } = await reading(storeOf(desk), async (tx) => ({
    picking: await readPicking(tx, pickingNo),
    firm: await readFirm(tx),
  }))
  if (picking === null) return noSuchPicking(pickingNo)
  const view = await printable(pickingView(picking, firm?.name ?? ''))
  if (!view.ok) return view
  return writePaper(await printPdf(pickingDocument(view.value), { createdOn: picking.madeOn }), where, desk)
}
