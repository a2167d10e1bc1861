import { Button } from '@mantine/core'
import { useQueryClient } from '@tanstack/react-query'
import type { ReactNode } from 'react'
import { sentencesOf } from '../../bridge/call.ts'
import { useAsk, useCommand } from '../../bridge/use-ask.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { dayInWords, money } from '../../parts/figures-in-words.ts'
import { ProblemList, Waiting } from '../../parts/notice.tsx'
import { LinkToItem } from './link-to-item.tsx'
import { PriceChart } from './price-chart.tsx'
import styles from './prices.module.css'
import { words } from './prices.words.ts'
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** One row of a supplier's list: what it is, what it cost and costs, and which item of the catalogue it is. */
export function RowCard({ rowNo, close }: { readonly rowNo: number; readonly close: () => void }) {
  const asked = useAsk('priceList.row', { rowNo })
  const queries = useQueryClient()
  const link = useCommand('priceList.link', () => askPricesAgain(queries))
  const relink = (itemId: string | null) => link.mutate({ rowNo, itemId })
  if (asked.isPending) return <Waiting what={words.row.waiting} />
  if (asked.error !== null)
    return <ProblemList title={words.row.failed} problems={sentencesOf(asked.error)} />
  const { row, prices } = asked.data
  return (
    <Card
      title={row.name === '' ? row.code : row.name}
      aside={
        <Button variant="default" onClick={close}>
          {words.row.close}
        </Button>
      }
    >
      <Stack>
        <dl className={styles.facts}>
          <Fact name={words.row.code}>{row.code}</Fact>
          <Fact name={words.row.packHolds}>{row.packHolds}</Fact>
          <Fact name={words.row.packPrice}>{money(row.netPence)}</Fact>
          {row.netPence === row.listPence ? null : (
            <Fact name={words.row.listPrice}>
              {words.row.less(money(row.listPence), (row.discountBasisPoints ?? 0) / 100, row.group)}
            </Fact>
          )}
          {(row.breaks ?? []).map(({ fromPacks, packPence }) => (
            <Fact key={fromPacks} name={words.row.fromPacks(fromPacks)}>
              {words.row.each(money(packPence))}
            </Fact>
          ))}
          {row.gtin === undefined ? null : <Fact name={words.row.gtin}>{row.gtin}</Fact>}
          {row.stale ? (
            <Fact name={words.row.old}>{words.row.oldSays(dayInWords(row.validFrom))}</Fact>
          ) : null}
        </dl>
        <LinkToItem row={row} relink={relink} busy={link.isPending} />
        {link.error === null ? null : (
          <ProblemList title={words.row.notLinked} problems={sentencesOf(link.error)} />
        )}
        <PriceChart prices={prices} />
      </Stack>
    </Card>
  )
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div className={styles.fact}>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  )
}
