import type { z } from 'zod'
import * as buying from './buying.ts'
import * as catalogue from './catalogue.ts'
import * as choosing from './choose.ts'
import * as heat from './heat.ts'
import * as houses from './house.ts'
import * as jobs from './job.ts'
import * as hydraulics from './hydraulics.ts'
import * as labour from './labour.ts'
import * as money from './money.ts'
import * as quotes from './quote.ts'
import * as suppliers from './suppliers.ts'
import * as walls from './wall.ts'
import * as water from './water.ts'

/** Every request there is. A name that is not here is asked for in vain at every door. */
export const requests = {
  'app.about': catalogue.appAbout,
  'buy.plan': suppliers.buyPlan,
  'buy.split': suppliers.buySplit,
  'catalogue.item': catalogue.catalogueItem,
  'catalogue.search': catalogue.catalogueSearch,
  'emitter.choose': choosing.emitterChoose,
  'emitter.output': heat.emitterOutput,
  'figures.list': catalogue.figuresList,
  'firm.read': jobs.firmRead,
  'firm.save': jobs.firmSave,
  'fixing.load': walls.fixingLoad,
  'flow.lowest': heat.flowLowest,
  'heat.load': heat.heatLoad,
  'heat.tables': houses.heatTablesListed,
  'house.balance': hydraulics.houseBalance,
  'house.flow': houses.houseFlow,
  'house.heat': houses.houseHeat,
  'house.swapEffects': houses.houseSwapEffects,
  'job.export': jobs.jobExport,
  'job.import': jobs.jobImport,
  'job.list': jobs.jobList,
  'job.read': jobs.jobRead,
  'job.remove': jobs.jobRemove,
  'job.sample': jobs.jobSample,
  'job.save': jobs.jobSave,
  'job.schema': jobs.jobSchema,
  'labour.estimate': labour.labourEstimate,
  'labour.job': labour.labourJob,
  'labour.learn': labour.labourLearn,
  'money.totals': money.moneyTotals,
  'packs.cover': buying.packsCover,
  'paper.read': quotes.paperRead,
  'pickList.build': quotes.pickListBuild,
  'pickList.pdf': quotes.pickListPdf,
  'pipe.cut': buying.pipeCut,
  'pipe.loss': water.pipeLoss,
  'price.set': catalogue.priceSet,
  'quote.build': quotes.quoteBuild,
  'quote.keep': quotes.quoteKeep,
  'quote.pdf': quotes.quotePdf,
  'setOut.pdf': quotes.setOutPdf,
  'system.content': hydraulics.systemContent,
  'takeoff.job': quotes.takeoffJob,
  'takeoff.swap': quotes.takeoffSwap,
  'uvalue.ageBand': houses.uvalueAgeBand,
  'uvalue.layers': heat.uvalueLayers,
  'valve.kv': hydraulics.valveKv,
  'valve.loss': hydraulics.valveLoss,
  'wall.fit': walls.wallFit,
  'wall.setOut': walls.wallSetOut,
  'water.dose': hydraulics.waterDose,
  'water.flow': water.waterFlow,
} as const

export type RequestName = keyof typeof requests
export type InputOf<N extends RequestName> = z.infer<(typeof requests)[N]['input']>
export type AnswerOf<N extends RequestName> = z.infer<(typeof requests)[N]['output']>

export function isRequestName(name: string): name is RequestName {
  return Object.hasOwn(requests, name)
}
