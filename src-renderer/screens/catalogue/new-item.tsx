import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { useLocation } from 'wouter'
import type { Item } from '../../../src-main/domain/item.ts'
import { problemsOf } from '../../bridge/call.ts'
import { Card, Stack } from '../../parts/card.tsx'
import { kindChoices } from '../../parts/item/item-fields.ts'
import type { Kind } from '../../parts/item/item-fields.ts'
import { ItemForm } from '../../parts/item/item-form.tsx'
import { words } from './catalogue.words.ts'
import { useItem } from './use-item.ts'

/** A fitting or fixing of the firm's own. An emitter is begun from the one that is most like it, brackets and all. */
export function NewItem({ close }: { readonly close: () => void }) {
  const [kind, setKind] = useState<Kind>('valve')
  const [itemId] = useState(() => `own-${Date.now()}`)
  const { save } = useItem()
  const [, navigate] = useLocation()
  const start = { itemId, kind, name: '', generic: false, spec: {} } as unknown as Item
  return (
    <Card
      title={words.made.title}
      says={words.made.says}
      aside={
        <Button variant="default" onClick={close}>
          {words.close}
        </Button>
      }
    >
      <Stack>
        <NativeSelect
          label={words.kind}
          value={kind}
          data={[...kindChoices]}
          onChange={({ currentTarget }) => setKind(currentTarget.value as Kind)}
        />
        {kind === 'emitter' ? (
          <p>{words.made.emitter}</p>
        ) : (
          <ItemForm
            key={kind}
            start={start}
            problems={problemsOf(save.error)}
            busy={save.isPending}
            button={words.made.add}
            onSave={(item) =>
              save.mutate({ item }, { onSuccess: (kept) => navigate(`/catalogue/${kept.item.itemId}`) })
            }
          />
        )}
      </Stack>
    </Card>
  )
}
