import type { Emitter } from '../../../src-main/domain/item.ts'

/** An invented panel of round figures. */
export function emitterForTests(changes: Partial<Emitter> = {}): Emitter {
  return {
    kind: 'emitter',
    itemId: 'test-panel',
    name: 'Test panel',
    generic: true,
    form: { kind: 'panel', panel: 'single' },
    finish: 'white',
    widthMm: 1000,
    heightMm: 600,
    depthMm: 60,
    wallGapMm: 40,
    connectionOffWallMm: 70,
    pipeCentresMm: 1070,
    ratedW: 1000,
    exponent: 1.3,
    waterLitres: 4,
    dryKg: 20,
    brackets: [],
    tappings: [],
    box: [],
    ...changes,
  }
}
