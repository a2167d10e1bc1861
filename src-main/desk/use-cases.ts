import packageJson from '../../package.json' with { type: 'json' }
import { accept } from '../domain/outcome.ts'
import { coverPacks } from '../engine/buying/cover-packs.ts'
import { cutPipe } from '../engine/buying/cut-pipe.ts'
import { emitterOutput } from '../engine/heat/emitter-output.ts'
import { heatLoad } from '../engine/heat/heat-load.ts'
import { houseFlow } from '../engine/heat/house-flow.ts'
import { houseHeat } from '../engine/heat/house-heat.ts'
import { houseSwapEffects } from '../engine/heat/house-swap-effects.ts'
import { lowestFlow } from '../engine/heat/lowest-flow.ts'
import { layersUValue } from '../engine/heat/u-value.ts'
import { estimateLabour } from '../engine/labour/estimate-labour.ts'
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
  'app.about': (_, desk) =>
    accept({ version: packageJson.version, dataFolder: desk.dataFolder, today: desk.today }),
  'buy.plan': later(() => import('./buying/buy-plan.ts'), 'buyPlan'),
  'buy.split': later(() => import('./buying/buy-split.ts'), 'buySplit'),
  'catalogue.item': later(() => import('./catalogue/catalogue-item.ts'), 'catalogueItem'),
  'catalogue.search': later(() => import('./catalogue/catalogue-search.ts'), 'catalogueSearch'),
  'emitter.choose': later(() => import('./choosing/emitter-choose.ts'), 'emitterChoose'),
  'emitter.output': emitterOutput,
  'figures.list': () =>
    accept({ settings: deliveredSettings, tasks: deliveredTasks, fixings: deliveredFixings }),
  'firm.read': later(() => import('./jobs/firm-read.ts'), 'firmRead'),
  'firm.save': later(() => import('./jobs/firm-save.ts'), 'firmSave'),
  'fixing.load': fixingLoad,
  'flow.lowest': lowestFlow,
  'heat.load': heatLoad,
  'heat.tables': later(() => import('./house/heat-tables.ts'), 'heatTables'),
  'house.balance': later(() => import('./hydraulics/house-balance.ts'), 'houseBalance'),
  'house.flow': houseFlow,
  'house.heat': houseHeat,
  'house.swapEffects': houseSwapEffects,
  'job.export': later(() => import('./jobs/job-export.ts'), 'jobExport'),
  'job.import': later(() => import('./jobs/job-import.ts'), 'jobImport'),
  'job.list': later(() => import('./jobs/job-list.ts'), 'jobList'),
  'job.read': later(() => import('./jobs/job-read.ts'), 'jobRead'),
  'job.remove': later(() => import('./jobs/job-remove.ts'), 'jobRemove'),
  'job.sample': later(() => import('./jobs/job-sample.ts'), 'jobSample'),
  'job.save': later(() => import('./jobs/job-save.ts'), 'jobSave'),
  'job.schema': later(() => import('./jobs/job-schema.ts'), 'jobSchema'),
  'labour.estimate': estimateLabour,
  'labour.job': later(() => import('./labour/labour-job.ts'), 'labourJob'),
  'labour.learn': later(() => import('./labour/labour-learn.ts'), 'labourLearn'),
  'money.totals': later(() => import('./quoting/money-totals.ts'), 'moneyTotals'),
  'packs.cover': coverPacks,
  'paper.read': later(() => import('./papers/paper-read.ts'), 'paperRead'),
  'pickList.build': later(() => import('./quoting/quote-build.ts'), 'pickListBuild'),
  'pickList.pdf': later(() => import('./papers/pick-list-pdf.ts'), 'pickListPdf'),
  'pipe.cut': cutPipe,
  'pipe.loss': pipeLoss,
  'price.set': later(() => import('./catalogue/price-set.ts'), 'priceSet'),
  'quote.build': later(() => import('./quoting/quote-build.ts'), 'quoteBuild'),
  'quote.keep': later(() => import('./quoting/quote-keep.ts'), 'quoteKeep'),
  'quote.pdf': later(() => import('./papers/quote-pdf.ts'), 'quotePdf'),
  'setOut.pdf': later(() => import('./papers/set-out-pdf.ts'), 'setOutPdf'),
  'system.content': later(() => import('./hydraulics/system-content.ts'), 'systemContent'),
  'takeoff.job': later(() => import('./quoting/takeoff.ts'), 'takeoffJob'),
  'takeoff.swap': later(() => import('./quoting/takeoff.ts'), 'takeoffSwap'),
  'uvalue.ageBand': later(() => import('./house/heat-tables.ts'), 'uvalueAgeBand'),
  'uvalue.layers': layersUValue,
  'valve.kv': valveKv,
  'valve.loss': valveLoss,
  'wall.fit': async (input, desk) => {
    const figures = await figuresInForce(desk, desk.today)
    return figures.ok ? fitWall(input, figures.value) : figures
  },
  'wall.setOut': async (input, desk) => {
    const figures = await figuresInForce(desk, desk.today)
    return figures.ok ? setOutWall(input, figures.value) : figures
  },
  'water.dose': later(() => import('./hydraulics/water-dose.ts'), 'waterDose'),
  'water.flow': waterFlow,
}

/** A use case whose file is loaded when it is first asked for. */
function later<N extends RequestName, K extends string>(
  load: () => Promise<Readonly<Record<K, UseCase<N>>>>,
  name: K,
): UseCase<N> {
  return async (input, desk) => (await load())[name](input, desk)
}
