import type { PickingBody } from '../../../../src-main/domain/follow-up/van.ts'
import { Card, Stack } from '../../../parts/card.tsx'
import { plain } from '../../../parts/figures-in-words.ts'
import { Notice, Verdict } from '../../../parts/notice.tsx'
import styles from '../van.module.css'
import { words } from '../van.words.ts'
import pickStyles from './pick.module.css'

/** What goes with the lines: what nobody sells, who lifts, which tools, how pipe is cut, what to mind. */
export function Beside({ body }: { readonly body: PickingBody }) {
  const { missing, lifts, tools, pipeCuts, cautions } = body
  return (
    <div className={pickStyles.beside}>
      <Stack>
        {missing.length === 0 ? null : (
          <Notice tone="warn" title={words.beside.missing}>
            <p>{words.beside.missingSays}</p>
            <Bullets of={missing} />
          </Notice>
        )}
        {lifts.length === 0 ? null : (
          <Notice tone="warn" title={words.beside.lifts}>
            <ul>
              {lifts.map(({ quoteId, name, massKg, says }) => (
                <li key={`${quoteId}${name}`}>
                  <Verdict tone="warn">{words.beside.lift(name, plain(massKg))}</Verdict>
                  <span className={pickStyles.under}>{`${quoteId}. ${says}`}</span>
                </li>
              ))}
            </ul>
          </Notice>
        )}
        {tools.length === 0 ? null : (
          <Card title={words.beside.tools}>
            <Bullets of={tools.map(({ name }) => name)} />
          </Card>
        )}
        {pipeCuts.length === 0 ? null : <Cuts pipeCuts={pipeCuts} />}
        {cautions.length === 0 ? null : (
          <Card title={words.beside.cautions}>
            <Bullets of={cautions} />
          </Card>
        )}
      </Stack>
    </div>
  )
}

function Bullets({ of }: { readonly of: readonly string[] }) {
  return (
    <ul className={pickStyles.bullets}>
      {of.map((says) => (
        <li key={says}>{says}</li>
      ))}
    </ul>
  )
}

function Cuts({ pipeCuts }: { readonly pipeCuts: PickingBody['pipeCuts'] }) {
  return (
    <Card title={words.beside.cuts}>
      {pipeCuts.map(({ name, bars }, at) => (
        <div key={`${name}${at}`} className={pickStyles.cut}>
          <h3>{name}</h3>
          <ol className={pickStyles.bullets}>
            {bars.map((bar, nth) => (
              <li key={nth}>
                <ul className={styles.plain2}>
                  {bar.cuts.map(({ id, lengthMm }, cut) => (
                    <li key={cut}>
                      <span className={styles.strong}>{words.beside.cut(plain(lengthMm))}</span> {id}
                    </li>
                  ))}
                  <li className={styles.soft}>{words.beside.offcut(plain(bar.offcutMm))}</li>
                </ul>
              </li>
            ))}
          </ol>
        </div>
      ))}
    </Card>
  )
}
