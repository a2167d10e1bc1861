import packageJson from '../../package.json' with { type: 'json' }
import { accept } from '../domain/outcome.ts'
import { coverPacks } from '../engine/buying/cover-packs.ts'
import { cutPipe } from '../engine/buying/cut-pipe.ts'
import { emitterOutput } from '../engine/heat/emitter-output.ts'
import { groundFloorUValue } from '../engine/heat/ground/ground-floor.ts'
import { heatLoad } from '../engine/heat/heat-load.ts'
import { houseFlow } from '../engine/heat/house-flow.ts'
import { houseHeat } from '../engine/heat/house-heat.ts'
import { houseSwapEffects } from '../engine/heat/house-swap-effects.ts'
import { lowestFlow } from '../engine/heat/lowest-flow.ts'
import { layersUValue } from '../engine/heat/u-value.ts'
import { estimateLabour } from '../engine/labour/estimate-labour.ts'
import { wallFigures } from './choosing/wall-figures.ts'
import { fitWall } from '../engine/wall/fit-wall.ts'
import { fixingLoad } from '../engine/wall/fixing-load.ts'
import { setOutWall } from '../engine/wall/set-out-wall.ts'
import { pipeLoss } from '../engine/water/pipe-loss.ts'
import { valveKv, valveLoss } from '../engine/water/valve-loss.ts'
import { waterFlow } from '../engine/water/water-flow.ts'
import type { RequestName } from '../contract/requests.ts'
import type { UseCase } from './desk.ts'
import { deliveredFixings, deliveredSettings, deliveredTasks, figuresInForce } from './figures-in-force.ts'

/**
 * Every request's use case. A missing one does not compile. What only some requests want (the store, the catalogue, the
 * documents) is loaded when it is first asked for.
 */
export const useCases: { readonly [N in RequestName]: UseCase<N> } = {
  'afterJob.account': later(() => import('./after-job/after-job.ts'), 'afterJobAccount'),
  'afterJob.close': later(() => import('./after-job/after-job.ts'), 'afterJobClose'),
  'afterJob.read': later(() => import('./after-job/after-job.ts'), 'afterJobRead'),
  'afterJob.save': later(() => import('./after-job/after-job.ts'), 'afterJobSave'),
  'app.about': (_, desk) =>
    accept({ version: packageJson.version, dataFolder: desk.dataFolder, today: desk.today }),
  'buy.plan': later(() => import('./buying/buy-plan.ts'), 'buyPlan'),
  'buy.split': later(() => import('./buying/buy-split.ts'), 'buySplit'),
  'catalogue.export': later(() => import('./catalogue/catalogue-export.ts'), 'catalogueExport'),
  'catalogue.item': later(() => import('./catalogue/catalogue-item.ts'), 'catalogueItem'),
  'catalogue.search': later(() => import('./catalogue/catalogue-search.ts'), 'catalogueSearch'),
  'commissioning.pdf': later(() => import('./after-job/after-papers.ts'), 'commissioningPdf'),
  'discountGroup.save': later(() => import('./prices/suppliers.ts'), 'discountGroupSave'),
  'emitter.choose': later(() => import('./choosing/emitter-choose.ts'), 'emitterChoose'),
  'emitter.output': emitterOutput,
  'favourite.list': later(() => import('./catalogue/favourites.ts'), 'favouriteList'),
  'favourite.set': later(() => import('./catalogue/favourites.ts'), 'favouriteSet'),
  'figures.inForce': later(() => import('./quoting/figures-of-day.ts'), 'figuresOfDay'),
  'figures.list': () =>
    accept({ settings: deliveredSettings, tasks: deliveredTasks, fixings: deliveredFixings }),
  'figures.own': later(() => import('./jobs/firm-figures.ts'), 'figuresOwn'),
  'figures.save': later(() => import('./jobs/firm-figures.ts'), 'figuresSave'),
  'file.keep': later(() => import('./price-files/file-keep.ts'), 'fileKeep'),
  'finalAccount.pdf': later(() => import('./after-job/after-papers.ts'), 'finalAccountPdf'),
  'firm.read': later(() => import('./jobs/firm-read.ts'), 'firmRead'),
  'firm.save': later(() => import('./jobs/firm-save.ts'), 'firmSave'),
  'fixing.load': fixingLoad,
  'flow.lowest': lowestFlow,
  'handover.pdf': later(() => import('./after-job/after-papers.ts'), 'handoverPdf'),
  'heat.load': heatLoad,
  'heat.tables': later(() => import('./house/heat-tables.ts'), 'heatTables'),
  'house.balance': later(() => import('./hydraulics/house-balance.ts'), 'houseBalance'),
  'house.flow': houseFlow,
  'house.heat': houseHeat,
  'house.swapEffects': houseSwapEffects,
  'item.copy': later(() => import('./catalogue/item-copy.ts'), 'itemCopy'),
  'item.retire': later(() => import('./catalogue/item-retire.ts'), 'itemRetire'),
  'item.save': later(() => import('./catalogue/item-save.ts'), 'itemSave'),
  'job.copy': later(() => import('./jobs/job-copy.ts'), 'jobCopy'),
  'job.export': later(() => import('./jobs/job-export.ts'), 'jobExport'),
  'job.find': later(() => import('./jobs/job-find.ts'), 'jobFind'),
  'job.flow': later(() => import('./house/job-flow.ts'), 'jobFlow'),
  'job.import': later(() => import('./jobs/job-import.ts'), 'jobImport'),
  'job.list': later(() => import('./jobs/job-list.ts'), 'jobList'),
  'job.mark': later(() => import('./jobs/job-mark.ts'), 'jobMark'),
  'job.read': later(() => import('./jobs/job-read.ts'), 'jobRead'),
  'job.remove': later(() => import('./jobs/job-remove.ts'), 'jobRemove'),
  'job.sample': later(() => import('./jobs/job-sample.ts'), 'jobSample'),
  'job.save': later(() => import('./jobs/job-save.ts'), 'jobSave'),
  'job.schema': later(() => import('./jobs/job-schema.ts'), 'jobSchema'),
  'job.summary': later(() => import('./jobs/job-summary.ts'), 'jobSummary'),
  'labour.estimate': estimateLabour,
  'labour.job': later(() => import('./labour/labour-job.ts'), 'labourJob'),
  'labour.learned': later(() => import('./after-job/after-job.ts'), 'labourLearned'),
  'labour.learn': later(() => import('./labour/labour-learn.ts'), 'labourLearn'),
  'money.totals': later(() => import('./quoting/money-totals.ts'), 'moneyTotals'),
  'order.cancel': later(() => import('./orders/order-life.ts'), 'orderCancel'),
  'order.csv': later(() => import('./orders/order-papers.ts'), 'orderCsv'),
  'order.deliver': later(() => import('./orders/order-deliver.ts'), 'orderDeliver'),
  'order.list': later(() => import('./orders/order-life.ts'), 'orderList'),
  'order.make': later(() => import('./orders/order-make.ts'), 'orderMake'),
  'order.pdf': later(() => import('./orders/order-papers.ts'), 'orderPdf'),
  'order.read': later(() => import('./orders/order-life.ts'), 'orderRead'),
  'order.sent': later(() => import('./orders/order-life.ts'), 'orderSent'),
  'order.xml': later(() => import('./orders/order-papers.ts'), 'orderXml'),
  'packs.cover': coverPacks,
  'paper.read': later(() => import('./papers/paper-read.ts'), 'paperRead'),
  'photo.list': later(() => import('./photos/photo-read.ts'), 'photoList'),
  'photo.read': later(() => import('./photos/photo-read.ts'), 'photoRead'),
  'photo.remove': later(() => import('./photos/photo-read.ts'), 'photoRemove'),
  'photo.save': later(() => import('./photos/photo-save.ts'), 'photoSave'),
  'pickList.build': later(() => import('./quoting/quote-build.ts'), 'pickListBuild'),
  'pickList.pdf': later(() => import('./papers/pick-list-pdf.ts'), 'pickListPdf'),
  'picking.close': later(() => import('./van/picking-work.ts'), 'pickingClose'),
  'picking.list': later(() => import('./van/picking-work.ts'), 'pickingList'),
  'picking.make': later(() => import('./van/picking-make.ts'), 'pickingMake'),
  'picking.pdf': later(() => import('./van/picking-pdf.ts'), 'pickingPdf'),
  'picking.read': later(() => import('./van/picking-work.ts'), 'pickingRead'),
  'picking.tick': later(() => import('./van/picking-work.ts'), 'pickingTick'),
  'pipe.cut': cutPipe,
  'pipe.loss': pipeLoss,
  'price.bulkApply': later(() => import('./prices/bulk.ts'), 'priceBulkApply'),
  'price.bulkCompare': later(() => import('./prices/bulk.ts'), 'priceBulkCompare'),
  'price.changes': later(() => import('./price-files/price-changes.ts'), 'priceChanges'),
  'price.export': later(() => import('./prices/price-export.ts'), 'priceExport'),
  'price.set': later(() => import('./catalogue/price-set.ts'), 'priceSet'),
  'price.undo': later(() => import('./price-files/price-changes.ts'), 'priceUndo'),
  'priceFile.apply': later(() => import('./price-files/price-file-apply.ts'), 'priceFileApply'),
  'priceFile.compare': later(() => import('./price-files/price-file-compare.ts'), 'priceFileCompare'),
  'priceFile.look': later(() => import('./price-files/price-file-look.ts'), 'priceFileLook'),
  'priceList.link': later(() => import('./price-files/price-list-row.ts'), 'priceListLink'),
  'priceList.setPrice': later(() => import('./price-files/price-list-set-price.ts'), 'priceListSetPrice'),
  'priceList.row': later(() => import('./price-files/price-list-row.ts'), 'priceListRow'),
  'priceList.search': later(() => import('./price-files/price-list-search.ts'), 'priceListSearch'),
  'quote.build': later(() => import('./quoting/quote-build.ts'), 'quoteBuild'),
  'quote.compare': later(() => import('./quote-life/quote-compare.ts'), 'quoteCompare'),
  'quote.drift': later(() => import('./quote-life/quote-drift.ts'), 'quoteDrift'),
  'quote.issue': later(() => import('./quote-life/quote-issue.ts'), 'quoteIssue'),
  'quote.list': later(() => import('./quote-life/quote-list.ts'), 'quoteList'),
  'quote.mail': later(() => import('./quote-life/quote-mail.ts'), 'quoteMail'),
  'quote.mark': later(() => import('./quote-life/quote-mark.ts'), 'quoteMark'),
  'quote.nextNumber': later(() => import('./quote-life/quote-next-number.ts'), 'quoteNextNumber'),
  'quote.pdf': later(() => import('./papers/quote-pdf.ts'), 'quotePdf'),
  'quote.read': later(() => import('./quote-life/quote-list.ts'), 'quoteRead'),
  'quote.xml': later(() => import('./quote-life/quote-xml.ts'), 'quoteXml'),
  'room.quick': later(() => import('./house/heat-tables.ts'), 'roomQuick'),
  'row.makeItem': later(() => import('./catalogue/row-make-item.ts'), 'rowMakeItem'),
  'setOut.pdf': later(() => import('./papers/set-out-pdf.ts'), 'setOutPdf'),
  'supplier.list': later(() => import('./prices/suppliers.ts'), 'supplierList'),
  'supplier.save': later(() => import('./prices/suppliers.ts'), 'supplierSave'),
  'surveyForm.pdf': later(() => import('./papers/survey-form-pdf.ts'), 'surveyFormPdf'),
  'system.content': later(() => import('./hydraulics/system-content.ts'), 'systemContent'),
  'takeoff.job': later(() => import('./quoting/takeoff.ts'), 'takeoffJob'),
  'takeoff.swap': later(() => import('./quoting/takeoff.ts'), 'takeoffSwap'),
  'uvalue.ageBand': later(() => import('./house/heat-tables.ts'), 'uvalueAgeBand'),
  'uvalue.groundFloor': groundFloorUValue,
  'uvalue.layers': layersUValue,
  'valve.kv': valveKv,
  'valve.loss': valveLoss,
  'wall.figures': wallFigures,
  'wall.fit': async (input, desk) => {
    const figures = await figuresInForce(desk, desk.today)
    return figures.ok ? fitWall(input, figures.value) : figures
  },
  'wall.setOut': async (input, desk) => {
    const figures = await figuresInForce(desk, desk.today)
    return figures.ok ? setOutWall(input, figures.value) : figures
  },
  'van.moves': later(() => import('./van/van-stock.ts'), 'vanMoves'),
  'van.note': later(() => import('./van/van-stock.ts'), 'vanNote'),
  'van.stock': later(() => import('./van/van-stock.ts'), 'vanStock'),
  'water.dose': later(() => import('./hydraulics/water-dose.ts'), 'waterDose'),
  'water.flow': waterFlow,
  'work.cancel': later(() => import('./running/work-requests.ts'), 'workCancel'),
  'work.progress': later(() => import('./running/work-requests.ts'), 'workProgress'),
}

/** A use case whose file is loaded when it is first asked for. */
function later<N extends RequestName, K extends string>(
  load: () => Promise<Readonly<Record<K, UseCase<N>>>>,
  name: K,
): UseCase<N> {
  return async (input, desk) => (await load())[name](input, desk)
}
