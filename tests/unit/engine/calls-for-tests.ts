import { coverPacks } from '../../../src-main/engine/buying/cover-packs.ts'
import { cutPipe } from '../../../src-main/engine/buying/cut-pipe.ts'
import { ageBandUValue } from '../../../src-main/engine/heat/age-band-u-value.ts'
import { exponentFromTwoRatings } from '../../../src-main/engine/heat/emitter-exponent.ts'
import { emitterOutput } from '../../../src-main/engine/heat/emitter-output.ts'
import { groundFloorUValue } from '../../../src-main/engine/heat/ground/ground-floor.ts'
import { heatLoad } from '../../../src-main/engine/heat/heat-load.ts'
import { houseFlow } from '../../../src-main/engine/heat/house-flow.ts'
import { houseHeat } from '../../../src-main/engine/heat/house-heat.ts'
import { houseSwapEffects } from '../../../src-main/engine/heat/house-swap-effects.ts'
import { jobFlow } from '../../../src-main/engine/heat/job/job-flow.ts'
import { lowestFlow } from '../../../src-main/engine/heat/lowest-flow.ts'
import { layersUValue } from '../../../src-main/engine/heat/u-value.ts'
import { daysOnSite } from '../../../src-main/engine/labour/days-on-site.ts'
import { estimateLabour } from '../../../src-main/engine/labour/estimate-labour.ts'
import { learnMinutes } from '../../../src-main/engine/labour/learn-minutes.ts'
import { moneyTotals } from '../../../src-main/engine/money/money-totals.ts'
import { centreLine } from '../../../src-main/engine/wall/centre-line.ts'
import { fitWall } from '../../../src-main/engine/wall/fit-wall.ts'
import { fixingLoad } from '../../../src-main/engine/wall/fixing-load.ts'
import { setOutWall } from '../../../src-main/engine/wall/set-out-wall.ts'
import { balanceHouse } from '../../../src-main/engine/water/balance-house.ts'
import { doseInContainers } from '../../../src-main/engine/water/dose-containers.ts'
import { pipeContent } from '../../../src-main/engine/water/pipe-content.ts'
import { pipeLoss } from '../../../src-main/engine/water/pipe-loss.ts'
import { surveyedContent } from '../../../src-main/engine/water/surveyed-content.ts'
import { doseLitres, systemContent } from '../../../src-main/engine/water/system-dose.ts'
import { valveKv, valveLoss } from '../../../src-main/engine/water/valve-loss.ts'
import { waterFlow } from '../../../src-main/engine/water/water-flow.ts'
import { answered } from '../../answered.ts'
import { defaultFigures } from '../../figures-for-tests.ts'
import { bedroomJob } from '../../job-for-tests.ts'
import { heatTablesOnDisk } from '../../heat-tables-for-tests.ts'
import { quick } from '../../quick-room-for-tests.ts'
import { placedIn, quoteOf } from './quote/work-for-tests.ts'
import { panelInput, railInput } from './wall/walls-for-tests.ts'

const figures = defaultFigures('2026-11-25')
const given = { says: 'A working day', value: 7, from: [] }
const radiator = { ratedW: 1000, exponent: 1.3 }
const measured = {
  name: 'Hall',
  roomC: 20,
  outsideC: -3,
  volumeM3: 30,
  floorAreaM2: 12,
  airChangesPerHour: 1.5,
  elements: [
    {
      name: 'Wall',
      areaM2: 10,
      uWPerM2K: 1.6,
      boundary: { kind: 'outside' },
      openings: [{ name: 'Window', areaM2: 2, uWPerM2K: 2.8 }],
    },
  ],
} as const
const bath = { name: 'Bath', loadW: 900, roomC: 22, emitters: [radiator] }
const pipe = { insideMm: 13.6, lengthM: 12, roughnessMm: 0.0015 }
const rating = { flowC: 75, returnC: 65, roomC: 20 }
const house = {
  legs: [{ id: 'main', from: null, pipe }],
  circuits: [{ id: 'bath', legId: 'main', watts: 1500, valveKvM3PerH: 0.6 }],
  flowC: 65,
  returnC: 55,
}

/** A typical question: what is asked, the answer, and the answer's own figure, which its reason must come to. */
export type Asked<I = unknown, A = unknown> = {
  readonly input: I
  readonly answer: (input: I) => A
  readonly figure?: (answer: A) => number | string
  /** Leaves that the rule works out by itself, and says as if they were given. */
  readonly also?: RegExp
}
/** Ties the answer to its question for the types, and lets the table forget them. */
function asked<I, A>(
  input: I,
  answer: (input: I) => A,
  figure?: (answer: A) => number | string,
  also?: RegExp,
): Asked {
  return {
    input,
    answer: () => answer(input),
    ...(figure === undefined ? {} : { figure: (found: unknown) => figure(found as A) }),
    ...(also === undefined ? {} : { also }),
  }
}

/** Every rule that answers with a reason, asked the plainest thing it is asked. Nothing is worked out until a test asks. */
export const calls: Readonly<Record<string, Asked>> = {
  emitterOutput: asked(
    { ...radiator, flowC: 55, returnC: 45, roomC: 20, factors: [{ name: 'Paint', value: 0.9 }] },
    (input) => answered(emitterOutput(input)),
    ({ watts }) => watts,
  ),
  exponentFromTwoRatings: asked(
    {
      first: { ratedW: 1000, rating },
      second: { ratedW: 520, rating: { flowC: 55, returnC: 45, roomC: 20 } },
    },
    (input) => answered(exponentFromTwoRatings(input)),
    ({ exponent }) => exponent,
  ),
  heatLoad: asked(
    { room: measured },
    (input) => answered(heatLoad(input)),
    ({ watts }) => watts,
  ),
  lowestFlow: asked(
    { loadW: 600, roomC: 20, spreadK: 10, maxFlowC: 70, emitters: [radiator] },
    (input) => answered(lowestFlow(input)),
    ({ flowC }) => flowC ?? Number.NaN,
  ),
  'lowestFlow, not reachable': asked(
    { loadW: 6000, roomC: 20, spreadK: 10, maxFlowC: 70, emitters: [radiator] },
    (input) => answered(lowestFlow(input)),
    ({ outputAtMaxW }) => outputAtMaxW,
  ),
  layersUValue: asked(
    {
      rsi: 0.13,
      rse: 0.04,
      layers: [
        { name: 'Brick', thicknessMm: 102, conductivityWPerMK: 0.77 },
        {
          name: 'Wool',
          thicknessMm: 100,
          conductivityWPerMK: 0.04,
          bridge: { fraction: 0.15, conductivityWPerMK: 0.13 },
        },
      ],
    },
    (input) => answered(layersUValue(input)),
    ({ uWPerM2K }) => uWPerM2K,
  ),
  ageBandUValue: asked(
    { element: 'wall', construction: 'solidBrick', builtYear: 1910 } as const,
    (input) => answered(ageBandUValue(input, heatTablesOnDisk)),
    ({ uWPerM2K }) => uWPerM2K,
  ),
  'groundFloorUValue, slab': asked(
    { kind: 'slab', areaM2: 48, perimeterM: 20, insulationM2KPerW: 1 } as const,
    (input) => answered(groundFloorUValue(input)),
    ({ uWPerM2K }) => uWPerM2K,
  ),
  'groundFloorUValue, suspended': asked(
    { kind: 'suspended', areaM2: 48, perimeterM: 20 } as const,
    (input) => answered(groundFloorUValue(input)),
    ({ uWPerM2K }) => uWPerM2K,
  ),
  houseFlow: asked(
    { spreadK: 10, maxFlowC: 75, rooms: [bath, { room: measured, emitters: [radiator] }] },
    (input) => answered(houseFlow(input)),
    ({ flowC, why }) => flowC ?? why.value,
  ),
  houseHeat: asked(
    { rooms: [measured] },
    (input) => answered(houseHeat(input)),
    ({ watts }) => watts,
  ),
  houseSwapEffects: asked(
    {
      spreadK: 10,
      rooms: [bath],
      candidates: [{ name: 'Rail', roomIndex: 0, remove: [0], add: [{ ratedW: 2000, exponent: 1.3 }] }],
    },
    (input) => answered(houseSwapEffects(input)),
    ({ ranked }) => ranked[0]?.lowersK ?? Number.NaN,
    /^Return: /,
  ),
  jobFlow: asked(
    {
      spreadK: 10,
      rooms: [
        {
          roomId: 'hall',
          room: measured,
          staying: [{ ratedW: 900, exponent: 1.3 }],
          swaps: [{ swapId: 's', name: 'Rail', old: radiator, new: { ratedW: 1500, exponent: 1.3 } }],
        },
      ],
    },
    (input) => answered(jobFlow(input)),
    ({ lowersK }) => lowersK ?? Number.NaN,
  ),
  quickRoom: asked({ lengthM: 4, widthM: 3, heightM: 2.4 }, (input) => answered(quick(input))),
  waterFlow: asked(
    { watts: 1500, flowC: 70, returnC: 55 },
    (input) => answered(waterFlow(input)),
    ({ litresPerMinute }) => litresPerMinute,
    /^Temperature of the water: 62\.5$/,
  ),
  pipeLoss: asked(
    { ...pipe, meanC: 60, litresPerMinute: 5, zetas: [0.7] },
    (input) => answered(pipeLoss(input)),
    ({ totalPa }) => totalPa,
  ),
  valveLoss: asked(
    { kvM3PerH: 0.6, litresPerMinute: 1.5, meanC: 60 },
    (input) => answered(valveLoss(input)),
    ({ pa }) => pa,
  ),
  valveKv: asked(
    { pa: 2000, litresPerMinute: 1.5, meanC: 60 },
    (input) => answered(valveKv(input)),
    ({ kvM3PerH }) => kvM3PerH,
  ),
  balanceHouse: asked(
    house,
    (input) => answered(balanceHouse(input, figures)),
    ({ headPa }) => headPa,
  ),
  pipeContent: asked(
    { insideMm: 13.6, lengthM: 10 },
    (input) => answered(pipeContent(input, [])),
    ({ litres }) => litres,
  ),
  systemContent: asked(
    { boilerKW: 15, litresPerKW: 11 },
    (input) => answered(systemContent(input)),
    ({ litres }) => litres,
  ),
  surveyedContent: asked(
    {
      emitters: [{ name: 'Panel', waterLitres: 3, count: 8 }],
      pipes: [{ insideMm: 13.6, lengthM: 60 }],
      boilerKW: 15,
      litresPerKW: 11,
    },
    (input) => answered(surveyedContent(input, [])),
    ({ litres }) => litres,
  ),
  doseLitres: asked(
    { contentLitres: 112, drainedShare: 0.5, treatedLitresPerLitre: 100 },
    (input) => answered(doseLitres(input)),
    ({ litres }) => litres,
  ),
  doseInContainers: asked(
    {
      contentLitres: 112,
      drainedShare: 1,
      treatedLitresPerLitre: 100,
      packs: [{ id: 'litre', holds: 1, pence: 1500 }],
    },
    (input) => answered(doseInContainers(input)),
    ({ containers }) => containers?.picks[0]?.count ?? Number.NaN,
  ),
  centreLine: asked(
    { centre: { kind: 'middleOfWall' }, pipes: [], pipeCentresMm: 450, wallWidthMm: 1800 } as const,
    (input) => answered(centreLine(input)),
    ({ centreMm }) => centreMm,
  ),
  fixingLoad: asked(
    {
      dryKg: 8,
      waterLitres: 2,
      extraKg: 0,
      projectionToCentreMm: 100,
      bracketRiseMm: 500,
      upperFixings: 2,
      allFixings: 4,
      allowedShearN: 100,
      allowedPullN: 100,
    },
    (input) => answered(fixingLoad(input)),
    () => 'holds',
  ),
  'fitWall, a rail': asked(
    railInput(),
    (input) => answered(fitWall(input, figures)),
    () => 'fits',
  ),
  'setOutWall, a rail': asked(
    railInput(),
    (input) => answered(setOutWall(input, figures)),
    ({ centreMm }) => centreMm,
  ),
  'setOutWall, a panel': asked(
    panelInput(),
    (input) => answered(setOutWall(input, figures)),
    ({ centreMm }) => centreMm,
  ),
  coverPacks: asked(
    {
      need: 7,
      packs: [
        { id: 'five', holds: 5, pence: 900 },
        { id: 'two', holds: 2, pence: 400 },
      ],
    },
    (input) => answered(coverPacks(input)),
    ({ pence }) => pence,
  ),
  cutPipe: asked(
    {
      pieces: [{ id: 'a', lengthMm: 1000, count: 3 }],
      stock: [{ id: '3m', lengthMm: 3000, pence: 900 }],
      kerfMm: 2,
    },
    (input) => answered(cutPipe(input)),
  ),
  estimateLabour: asked(
    { tasks: [{ name: 'Build', count: 2, optimisticMin: 5, likelyMin: 8, pessimisticMin: 14 }] },
    (input) => answered(estimateLabour(input)),
  ),
  learnMinutes: asked(
    { prior: { meanMin: 10, sdMin: 2 }, actuals: [{ minutes: 60, count: 4 }] },
    (input) => answered(learnMinutes(input, { count: 4, why: { ...given, says: 'Weight', value: 4 } })),
    ({ expectedMin }) => expectedMin,
  ),
  daysOnSite: asked({ p50SiteMin: 420, p80SiteMin: 430, travelMin: 24 }, (input) =>
    answered(daysOnSite(input, { hoursPerDay: 7, why: given })),
  ),
  moneyTotals: asked(
    { lines: [{ netPence: 10_000, category: 'standard' }], rounding: 'document', rule: 'half-up' } as const,
    (input) => answered(moneyTotals(input, figures)),
  ),
  buildQuote: asked(
    { job: bedroomJob(), placed: placedIn() },
    ({ job }) => quoteOf(job),
    undefined,
    /^(Labour of the whole job|Parts and labour): /,
  ),
}
