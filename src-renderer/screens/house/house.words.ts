/** What the house view says. */
export const words = {
  asking: 'Working out the house',
  refused: 'The house can’t be worked out until this is put right',
  noRooms: 'No rooms yet',
  noRoomsSays: 'The flow temperature of a house is that of its worst room: add the rooms first.',
  addRoom: 'Add a room',
  noSwaps: 'No swaps yet',
  noSwapsSays:
    'Below stands the house as it is, as far as its emitters were surveyed. Add a swap and see here what it does to the flow temperature.',
  addSwap: 'Add a swap',
  title: 'The house',
  whyHouse: 'the flow temperature of the house',
  whyRoom: (room: string) => `the flow temperature of ${room}`,
  degrees: (degreesC: string) => `${degreesC} °C`,
  sentence: {
    whole: (swaps: number, found: string) =>
      `${swaps === 0 ? 'As it is' : swaps === 1 ? 'With this swap' : 'With these swaps'} ${found}`,
    notJudged: 'nothing can be said of the house: no room is measured and surveyed yet.',
    warm: (backed: boolean, flow: string, worstRoom: string) =>
      `${backed ? 'the house is' : 'the rooms that are measured are'} warm at ${flow} flow; ${worstRoom} decides it.`,
    noHeat: (backed: boolean) =>
      `${backed ? 'the house needs' : 'the rooms that are measured need'} no heat.`,
    short: (roomsShort: number, worstRoom: string) =>
      roomsShort === 1 ? `${worstRoom} stays` : `${roomsShort} rooms stay`,
    cold: (backed: boolean, short: string, highest: string) =>
      `${backed ? 'the house is' : 'the rooms that are measured are'} not warm: ${short} short of heat even at ${highest}.`,
  },
  compare: {
    notSurveyed: 'What it takes as it is, nobody has surveyed.',
    cold: (room: string, highest: string) => `As it is, ${room} stays cold even at ${highest}.`,
    aRoom: 'a room',
    now: (flow: string, room: string) => `As it is, it takes ${flow} (${room})`,
    only: (now: string) => `${now}.`,
    same: (now: string) => `${now}: no lower with the swaps.`,
    moved: (now: string, lowers: boolean, byK: string) =>
      `${now}: the swaps ${lowers ? 'lower' : 'raise'} it by ${byK} K.`,
  },
  rooms: 'Rooms by the flow temperature they need',
  roomsSays: (spreadK: string) =>
    `The worst is on top and decides the house. The return is ${spreadK} K below the flow.`,
  nobodyJudged: 'No room can be put in order yet: see what is missing below.',
  key: { before: 'As it is', after: 'With the swaps' },
  columns: {
    room: 'Room',
    needs: 'Heat needed',
    scale: 'Flow temperature',
    before: 'As it is',
    after: 'With the swaps',
    why: 'Why',
  },
  decides: 'decides the house',
  noSwapHere: 'No swap',
  states: {
    warm: 'Warm',
    short: 'Too little heat',
    noEmitters: 'No emitter',
    needsNoHeat: 'Needs no heat',
    rough: 'Only guessed',
    notSurveyed: 'Not surveyed',
  },
  shortAt: (highest: string) => `Short at ${highest}`,
  open: 'Rooms that can’t back a flow temperature',
  openSays: 'Until these are put right, the figure above is not yet the whole house.',
  mend: {
    rough: (name: string) => `Measure the heat of ${name}`,
    notSurveyed: (name: string) => `Give the emitters of ${name}`,
  },
  effects: 'What each swap does',
  effectsSays: 'The one that would be missed most comes first.',
  leftOut: {
    why: (room: string) => `leaving out ${room}`,
    asItIs: 'The room as it is',
    notKnown: (room: string) =>
      `What leaving out ${room} does is not known: nobody surveyed what is there now.`,
    cold: (room: string, highest: string) => `Leaving out ${room} leaves it cold, even at ${highest}.`,
    held: (room: string) => `Leaving out ${room} changes nothing: another room stays cold either way.`,
    same: (room: string, decides: string) =>
      `Leaving out ${room} changes nothing: ${decides} decides it either way.`,
    moved: (room: string, raises: boolean, then: { readonly byK: string; readonly says: string }) =>
      `Leaving out ${room} ${raises ? 'raises' : 'lowers'} it by ${then.byK} K, ${then.says}.`,
    itself: (flow: string) => `to ${flow}; it then decides`,
    another: (flow: string, decides: string) => `to ${flow}; ${decides} then decides`,
  },
  alone: 'Done alone, from the house as it is',
  aloneSays: 'Best first. Of use when the customer wants only one of them for now.',
  whyAlone: (swap: string) => `${swap}, done alone`,
  assumed: 'Taken as given',
  moreAssumed: (count: number) => `And ${count} more`,
  balance: {
    title: 'Balancing',
    says: (flowC: string, returnC: string) =>
      `The water that each emitter takes when it runs at ${flowC} °C flow and ${returnC} °C return.`,
    finding: 'Looking up the emitters',
    asking: 'Balancing the house',
    columns: {
      room: 'Room',
      emitter: 'Emitter',
      heat: 'Gives',
      water: 'Water',
      kv: 'Lockshield',
      opening: 'Opened by',
    },
    total: 'Together',
    litres: (litresPerMinute: string) => `${litresPerMinute} l/min`,
    why: (emitter: string, room: string) => `the water through ${emitter} in ${room}`,
    through: (emitter: string, room: string) => `Water through ${emitter} in ${room}`,
    staying: (room: string) => `Emitters that stay in ${room} give`,
    stays: 'What stays',
    kvOf: (kv: string) => `Kv ${kv} m³/h`,
    openedBy: (at: string, unit: string) => `${at} ${unit}`,
    emitterIn: (room: string, emitter: string) => `${room}: ${emitter}`,
    quoted: (name: string) => `“${name}”`,
    index: 'Index circuit: fully open',
    open: 'Fully open',
    onNoRun: 'On no run of pipe',
    notInTable: 'Not in the valve’s table',
    notCounted: (rooms: string) =>
      `Not counted: ${rooms}. Nobody surveyed the emitters there, so the house takes more water than this.`,
    without: (room: string) =>
      `An emitter in ${room} is left out: it is not in the catalogue, or gives nothing at these temperatures.`,
    noPipes:
      'For the index circuit and the Kv of each lockshield the pipes are needed: give the runs from the boiler to each emitter, with length and inside diameter.',
    wanted: 'Wanted before the house can be balanced',
    wantedRun: 'Give a run of pipe first.',
    wantedLength: (run: string) => `Give the length of ${run}.`,
    wantedEnd: 'Say at least of one run which emitter hangs at its end.',
    twoRuns: (run: string, other: string) =>
      `${run} and ${other} end at the same emitter: let one of them end at a branch.`,
    run: { first: 'Run ', within: 'run ' },
    refused: 'The house can’t be balanced until this is put right',
    head: (index: string, headM: string, kPa: string) =>
      `The index circuit is ${index}: the pump must give ${headM} m of head (${kPa} kPa) at this flow.`,
    whyHead: 'the head of the pump',
    loose: (what: string) => `${what} hangs on no run of pipe and is left out of the balance.`,
    smooth:
      'Pipes are taken as new and smooth (0.0015 mm: drawn copper, or plastic). Thermostatic valves and the emitters themselves are not counted.',
  },
  runs: {
    title: 'Runs of pipe',
    says: 'Inside diameters of copper: 8.8 mm for 10 mm pipe, 13.6 for 15, 20.2 for 22 (EN 1057). The length is flow and return together.',
    columns: {
      name: 'Name',
      from: 'Starts at',
      to: 'Ends at',
      length: 'Length, both ways (m)',
      inside: 'Inside (mm)',
      zeta: 'Fittings (sum of zeta)',
      remove: 'Remove',
    },
    newName: (nth: number) => `Run ${nth}`,
    of: (what: string, run: string) => `${what}: ${run}`,
    boiler: 'The boiler',
    branch: 'A branch',
    gone: 'An emitter no longer in the job',
    endOf: (name: string) => `The end of ${name}`,
    remove: 'Remove',
    add: 'Add a run of pipe',
  },
  lockshield: {
    title: 'The lockshield’s table',
    says: 'From the valve maker’s sheet, closed to open. Without it only the Kv is named, never a number of turns.',
    turns: 'Turns open',
    kv: 'Kv (m³/h)',
    row: (turns: string, kv: string) => `${turns === '1' ? '1 turn' : `${turns} turns`} open: Kv ${kv} m³/h`,
    remove: 'Remove',
    removeRow: (turns: string) => `Remove the row of ${turns} turns`,
    noRow: 'Give both as numbers of 0 or more.',
    add: 'Add the row',
  },
  water: {
    title: 'Water in the system',
    says: 'By the same figures as the parts list, which buys whole containers.',
    asking: 'Working out the water',
    ownFigure: 'the job’s own figure',
    litres: (litres: string, one: boolean) => `${litres} ${one ? 'litre' : 'litres'}`,
    refused: 'The water can’t be worked out until this is put right',
    content: 'In the system',
    contentSays: (surveyed: boolean, assumedKW: string | null) =>
      surveyed
        ? 'As surveyed.'
        : assumedKW === null
          ? 'An allowance by the boiler’s output: the water itself was not surveyed.'
          : `An allowance for a boiler of ${assumedKW} kW: neither the water nor the boiler was surveyed.`,
    inhibitor: 'Inhibitor',
    share: (percent: string) =>
      percent === '100'
        ? 'All of the water is let out and dosed anew.'
        : `${percent}% of the water is let out and dosed anew.`,
    cleaner: 'Cleaner',
    why: {
      content: 'the water in the system',
      inhibitor: 'how much inhibitor',
      cleaner: 'how much cleaner',
    },
    cleanerSays: 'For the flush, which goes through all of the water.',
  },
  whatIf: (name: string) => `Try other flow temperatures in ${name}`,
} as const
