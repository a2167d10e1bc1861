type Side = 'left' | 'right'

/** A side at the beginning of a sentence. */
const sideBegins = (side: Side) => (side === 'left' ? 'Left' : 'Right')

type Pictured = { readonly widthMm: number; readonly heightMm: number; readonly emitter: string }
type Boxed = Readonly<Record<'x' | 'y' | 'width' | 'height', string>>
type Drilled = { readonly holes: number; readonly fixing: string; readonly needsBoard: boolean }

/** What the drawing of a wall says: the drawing itself, everything on it in words, and what was set out. Lengths come in words. */
export const words = {
  waiting: 'Setting it out on the wall',
  failed: "It can't be set out as it stands",
  how: 'Drag a thing or move it with the arrow keys: 1 mm, with Shift 10 mm; Escape takes it back. Ctrl and the wheel, or plus and minus, make the drawing larger and smaller; 0 shows the whole wall. “The drawing in words” lists everything on it.',
  fits: 'It fits the wall',
  fitsNot: (clashes: string) => `It does not fit: ${clashes}`,
  standing: (centre: string, bottom: string) =>
    `Centre ${centre} from the left, bottom ${bottom} above the floor.`,
  canvas: (wall: string) => `Drawing of ${wall}`,
  mistyped: {
    message:
      'A measurement of this wall, its pipes, the old emitter or the new one is missing or is no number that fits.',
    next: 'Put right what is marked beside its box; the drawing follows.',
  },
  named: {
    rail: 'New rail',
    radiator: 'New radiator',
    bit: (hole: string, drillMm: number) => `${hole}: ${drillMm} mm bit`,
    oldNotMeasured: 'Old one, place not measured',
    oldByHoles: 'Old one, placed by its holes',
  },
  tools: {
    size: 'Size of the drawing',
    smaller: 'Smaller',
    larger: 'Larger',
    whole: 'Whole wall',
    times: (times: number) => `${times} times`,
    shown: 'Shown on the drawing',
    zones: 'Cable zones',
    asked: 'Clear space needed',
    tiles: 'Tile joints',
    plan: 'From above',
  },
  list: {
    columns: ['What', 'From the left end', 'From the floor', 'Size', 'Clear space'],
    title: 'The drawing in words',
    titleOf: (wall: string) => `The drawing in words, ${wall}`,
    things: (wall: string) => `Things on ${wall}`,
  },
  picture: {
    what: (wall: string, { widthMm, heightMm, emitter }: Pictured) =>
      `${wall}, ${widthMm} by ${heightMm} mm, with ${emitter}: `,
    where: (centre: string, bottom: string) =>
      `centre line ${centre} from the left, bottom edge ${bottom} above the floor, `,
    holes: (many: number) => `${many} holes to drill.`,
  },
  handles: {
    keys: 'arrow keys move it',
    obstacle: (name: string, { x, y, width, height }: Boxed) =>
      `${name}, ${x} from the left, ${y} above the floor, ${width} wide, ${height} high`,
    old: (name: string, left: string, bottom: string) => `Old: ${name}, left edge ${left}, bottom ${bottom}`,
    emitter: (name: string, centre: string, bottom: string) =>
      `${name}, centre ${centre} from the left, bottom ${bottom}`,
  },
  guides: {
    onLine: (says: string) => `On the line: ${says}`,
    betweenPipes: 'between the pipes',
    valveOnPipe: (side: Side) => `${side} valve on its pipe`,
    pipe: (side: Side) => `${side} pipe`,
    end: (side: Side) => `${side} end of the wall`,
    middleOfWall: 'middle of the wall',
    middleOf: (name: string) => `middle of ${name}`,
    leastAboveFloor: 'least above the floor',
    justUnder: (what: string) => `just clear under ${what}`,
    onFloor: 'on the floor',
  },
  things: {
    newOne: (name: string) => `New: ${name}`,
    oldOne: (name: string) => `Old: ${name}`,
    oldHole: (nth: number) => `Old hole ${nth}`,
    centre: (length: string) => `centre ${length}`,
    bottom: (length: string) => `bottom ${length}`,
    leftEdge: (length: string) => `left edge ${length}`,
    ofKind: (name: string, kind: string) => `${name} (${kind})`,
    inWall: (side: Side) => `in the wall on the ${side}`,
    leaf: (size: string, leaf: string) => `${size}; leaf ${leaf}`,
    pipe: (side: Side, from: string) => `${sideBegins(side)} pipe, from the ${from}`,
    endNotMeasured: 'end not measured',
    end: (length: string) => `end ${length}`,
    valve: (side: Side) => `${sideBegins(side)} valve, pipe entry`,
    hole: (id: string, fixing: string) => `Hole ${id}: ${fixing}`,
    drilled: (bit: string, depth: string) => `${bit} bit, ${depth} deep`,
    size: (width: string, height: string) => `${width} wide, ${height} high`,
    inJoint: 'in a tile joint',
    fromTileEdge: (length: string) => `${length} from the edge of its tile`,
    clash: 'Clash: ',
    overlaps: (length: string) => `overlaps by ${length}`,
    clear: (length: string) => `${length} clear`,
    needed: (has: string, needs: string) => `${has}, ${needs} needed`,
  },
  centre: {
    at: (length: string) => `${length} from the wall’s left end`,
    betweenPipes: (at: string) => `Its centre line is midway between the pipes, ${at}.`,
    fromPipe: (side: Side, at: string) => `Its centre line is set from the ${side} pipe, ${at}.`,
    middleOfWall: (at: string) => `Its centre line is the middle of the wall, ${at}.`,
    put: (at: string) => `Its centre line is where you put it, ${at}.`,
  },
  setOut: {
    kept: 'Every clearance is kept.',
    notKept: 'Not every clearance is kept.',
    whyFits: 'whether it fits the wall',
    drill: (centre: string, { holes, fixing, needsBoard }: Drilled) =>
      `Centre line ${centre} mm from the wall’s left end, ${holes} holes, ${fixing}${needsBoard ? ', with a backing board across the studs' : ''}.`,
    whyDrill: 'where to drill',
    pipes: 'Pipes',
    pipe: (side: Side, remedy: string) => `${sideBegins(side)} pipe: ${remedy}`,
    whyPipe: (side: Side) => `what the ${side} pipe needs`,
    unmeasured:
      'The old holes were counted, not measured: they are not drawn, and the new holes are not checked against them.',
    remedies: {
      none: 'reaches its valve as it is.',
      longerTail: 'wants a longer tail on the valve.',
      pull: 'can be pulled across to its valve.',
      repipe: 'is cut back and led to its valve anew.',
    },
  },
} as const
