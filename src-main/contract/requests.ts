import type { z } from 'zod'
import * as afterJobs from './after-job.ts'
import * as buying from './buying.ts'
import * as catalogue from './catalogue.ts'
import * as choosing from './choose.ts'
import * as figuresNow from './figures-in-force.ts'
import * as floors from './heating/ground-floor.ts'
import * as heat from './heating/heat.ts'
import * as houses from './heating/house.ts'
import * as jobs from './job.ts'
import * as jobFlows from './heating/job-flow.ts'
import * as hydraulics from './heating/hydraulics.ts'
import * as labour from './labour.ts'
import * as money from './money.ts'
import * as orders from './orders.ts'
import * as prices from './price-lists.ts'
import * as quoteLife from './quote-life.ts'
import * as quotes from './quote.ts'
import * as suppliers from './suppliers.ts'
import * as survey from './survey.ts'
import * as vans from './van.ts'
import * as walls from './wall.ts'
import * as wallFigures from './wall-figures.ts'
import * as water from './heating/water.ts'

/** Every request there is. A name that is not here is asked for in vain at every door. */
export const requests = {
  'afterJob.account': afterJobs.afterJobAccount,
  'afterJob.close': afterJobs.afterJobClose,
  'afterJob.read': afterJobs.afterJobRead,
  'afterJob.save': afterJobs.afterJobSave,
  'app.about': catalogue.appAbout,
  'buy.plan': suppliers.buyPlan,
  'buy.split': suppliers.buySplit,
  'catalogue.export': catalogue.catalogueExport,
  'catalogue.item': catalogue.catalogueItem,
  'catalogue.search': catalogue.catalogueSearch,
  'commissioning.pdf': afterJobs.commissioningPdf,
  'discountGroup.save': prices.discountGroupSave,
  'emitter.choose': choosing.emitterChoose,
  'emitter.output': heat.emitterOutput,
  'favourite.list': catalogue.favouriteList,
  'favourite.set': catalogue.favouriteSet,
  'figures.inForce': figuresNow.figuresInForce,
  'figures.list': catalogue.figuresList,
  'figures.own': jobs.figuresOwn,
  'figures.save': jobs.figuresSave,
  'file.keep': prices.fileKeep,
  'finalAccount.pdf': afterJobs.finalAccountPdf,
  'firm.read': jobs.firmRead,
  'firm.save': jobs.firmSave,
  'fixing.load': walls.fixingLoad,
  'flow.lowest': heat.flowLowest,
  'handover.pdf': afterJobs.handoverPdf,
  'heat.load': heat.heatLoad,
  'heat.tables': houses.heatTablesListed,
  'house.balance': hydraulics.houseBalance,
  'house.flow': houses.houseFlow,
  'house.heat': houses.houseHeat,
  'house.swapEffects': houses.houseSwapEffects,
  'item.copy': catalogue.itemCopy,
  'item.retire': catalogue.itemRetire,
  'item.save': catalogue.itemSave,
  'job.copy': jobs.jobCopy,
  'job.export': jobs.jobExport,
  'job.find': jobs.jobFind,
  'job.flow': jobFlows.jobFlow,
  'job.import': jobs.jobImport,
  'job.list': jobs.jobList,
  'job.mark': jobs.jobMark,
  'job.read': jobs.jobRead,
  'job.remove': jobs.jobRemove,
  'job.sample': jobs.jobSample,
  'job.save': jobs.jobSave,
  'job.schema': jobs.jobSchema,
  'job.summary': jobs.jobSummary,
  'labour.estimate': labour.labourEstimate,
  'labour.job': labour.labourJob,
  'labour.learned': afterJobs.labourLearned,
  'labour.learn': labour.labourLearn,
  'money.totals': money.moneyTotals,
  'order.cancel': orders.orderCancel,
  'order.csv': orders.orderCsv,
  'order.deliver': orders.orderDeliver,
  'order.list': orders.orderList,
  'order.make': orders.orderMake,
  'order.pdf': orders.orderPdf,
  'order.read': orders.orderRead,
  'order.sent': orders.orderSent,
  'order.xml': orders.orderXml,
  'packs.cover': buying.packsCover,
  'paper.read': quotes.paperRead,
  'photo.list': survey.photoList,
  'photo.read': survey.photoRead,
  'photo.remove': survey.photoRemove,
  'photo.save': survey.photoSave,
  'pickList.build': quotes.pickListBuild,
  'pickList.pdf': quotes.pickListPdf,
  'picking.close': vans.pickingClose,
  'picking.list': vans.pickingList,
  'picking.make': vans.pickingMake,
  'picking.pdf': orders.pickingPdf,
  'picking.read': vans.pickingRead,
  'picking.tick': vans.pickingTick,
  'pipe.cut': buying.pipeCut,
  'pipe.loss': water.pipeLoss,
  'price.bulkApply': prices.priceBulkApply,
  'price.bulkCompare': prices.priceBulkCompare,
  'price.changes': prices.priceChanges,
  'price.export': prices.priceExport,
  'price.set': catalogue.priceSet,
  'price.undo': prices.priceUndo,
  'priceFile.apply': prices.priceFileApply,
  'priceFile.compare': prices.priceFileCompare,
  'priceFile.look': prices.priceFileLook,
  'priceList.link': prices.priceListLink,
  'priceList.setPrice': prices.priceListSetPrice,
  'priceList.row': prices.priceListRow,
  'priceList.search': prices.priceListSearch,
  'quote.build': quotes.quoteBuild,
  'quote.compare': quoteLife.quoteCompare,
  'quote.drift': quoteLife.quoteDrift,
  'quote.issue': quoteLife.quoteIssue,
  'quote.list': quoteLife.quoteList,
  'quote.mail': quoteLife.quoteMail,
  'quote.mark': quoteLife.quoteMark,
  'quote.nextNumber': quoteLife.quoteNextNumber,
  'quote.pdf': quotes.quotePdf,
  'quote.read': quoteLife.quoteRead,
  'quote.xml': quoteLife.quoteXml,
  'room.quick': survey.roomQuick,
  'row.makeItem': catalogue.rowMakeItem,
  'setOut.pdf': quotes.setOutPdf,
  'supplier.list': prices.supplierList,
  'supplier.save': prices.supplierSave,
  'surveyForm.pdf': survey.surveyFormPdf,
  'system.content': hydraulics.systemContent,
  'takeoff.job': quotes.takeoffJob,
  'takeoff.swap': quotes.takeoffSwap,
  'uvalue.ageBand': houses.uvalueAgeBand,
  'uvalue.groundFloor': floors.uvalueGroundFloor,
  'uvalue.layers': heat.uvalueLayers,
  'valve.kv': hydraulics.valveKv,
  'valve.loss': hydraulics.valveLoss,
  'wall.figures': wallFigures.wallFigures,
  'wall.fit': walls.wallFit,
  'wall.setOut': walls.wallSetOut,
  'van.moves': vans.vanMoves,
  'van.note': vans.vanNote,
  'van.stock': vans.vanStock,
  'water.dose': hydraulics.waterDose,
  'water.flow': water.waterFlow,
  'work.cancel': prices.workCancel,
  'work.progress': prices.workProgress,
} as const

export type RequestName = keyof typeof requests
export type InputOf<N extends RequestName> = z.infer<(typeof requests)[N]['input']>
export type AnswerOf<N extends RequestName> = z.infer<(typeof requests)[N]['output']>

export function isRequestName(name: string): name is RequestName {
  return Object.hasOwn(requests, name)
}
