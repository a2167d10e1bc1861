import type { SideAsk } from './asks.ts'

/**
 * How new pipe is joined: push-fit on plastic, compression on copper and steel stubs, so that no flame is needed.
 * @param material what the old pipe is made of
 * @source practice, no published source
 * @example pipeJoint('plastic') // => "pushFit"
 */
export function pipeJoint(material: SideAsk['pipe']['material']): 'compression' | 'pushFit' {
  return material === 'plastic' ? 'pushFit' : 'compression'
}
