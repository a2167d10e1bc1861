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
import { askPricesAgain } from './bring-in/use-bring-in.ts'

/** One row of a supplier's list: what it is, what it cost and costs, and which item of the catalogue it is. */
export function RowCard({ rowNo, close }: { readonly rowNo: number; readonly close: () => void }) {
  const asked = useAsk('priceList.row', { rowNo })
  const queries = useQueryClient()
  const link = useCommand('priceList.link', () => askPricesAgain(queries))
  const relink = (itemId: string | null) => link.mutate({ rowNo, itemId })
  if (asked.isPending) return <Waiting what="Looking at this row" />
  if (asked.error !== null) return <ProblemList title="Not shown" problems={sentencesOf(asked.error)} />
  const { row, prices } = asked.data
  return (
    <Card
      title={row.name === '' ? row.code : row.name}
      aside={
        <Button variant="default" onClick={close}>
          Close
        </Button>
      }
    >
      <Stack>
        <dl className={styles.facts}>
          <Fact name="Code">{row.code}</Fact>
          <Fact name="A pack holds">{row.packHolds}</Fact>
          <Fact name="Price of a pack">{money(row.netPence)}</Fact>
          {row.netPence === row.listPence ? null : (
            <Fact name="On the list">
              {money(row.listPence)}, less {(row.discountBasisPoints ?? 0) / 100} % for group {row.group}
            </Fact>
          )}
          {(row.breaks ?? []).map(({ fromPacks, packPence }) => (
            <Fact key={fromPacks} name={`From ${fromPacks} packs`}>
              {money(packPence)} each
            </Fact>
          ))}
          {row.gtin === undefined ? null : <Fact name="Bar code">{row.gtin}</Fact>}
          {row.stale ? (
            <Fact name="Old">
              This price began on {dayInWords(row.validFrom)}; ask whether it still holds.
            </Fact>
          ) : null}
        </dl>
        <LinkToItem row={row} relink={relink} busy={link.isPending} />
        {link.error === null ? null : <ProblemList title="Not linked" problems={sentencesOf(link.error)} />}
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
