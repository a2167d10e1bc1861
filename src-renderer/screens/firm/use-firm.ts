import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { Firm, PriceDetail } from '../../../src-main/domain/firm.ts'
import { call } from '../../bridge/call.ts'
import { askKey, useAsk } from '../../bridge/use-ask.ts'

/** The firm's details as they are typed: lists as lines of text. */
export type FirmText = {
  readonly name: string
  readonly address: string
  readonly phone: string
  readonly email: string
  readonly taxNumber: string
  readonly registrations: string
  readonly terms: string
  /** Empty where the usual pattern stands. */
  readonly quoteNumbers: string
  readonly logo: Firm['logo']
  readonly currency: 'GBP'
  readonly heatFirst: 'W' | 'BtuPerHour'
  readonly priceDetail: PriceDetail
}

/** The boxes that hold text. */
export type FirmField = Exclude<keyof FirmText, 'logo' | 'currency' | 'heatFirst' | 'priceDetail'>

/** Where each of our boxes lies in the request. */
export const fieldPaths: Readonly<Record<FirmField, string>> = {
  name: 'firm.name',
  address: 'firm.addressLines',
  phone: 'firm.phone',
  email: 'firm.email',
  taxNumber: 'firm.taxNumber',
  registrations: 'firm.registrations',
  terms: 'firm.terms',
  quoteNumbers: 'firm.quoteNumbers',
}

/** The firm's details, and the way to keep them. */
export function useFirm() {
  const queries = useQueryClient()
  const asked = useAsk('firm.read', {})
  const save = useMutation({
    mutationFn: (text: FirmText) => call('firm.save', { firm: firmOf(text) }),
    onSuccess: ({ firm }) => {
      queries.setQueryData(askKey('firm.read', {}), { firm })
      void queries.invalidateQueries({ queryKey: ['quote.build'] })
      void queries.invalidateQueries({ queryKey: ['job.summary'] })
    },
  })
  return { asked, save }
}

export function textOf(firm: Firm | null): FirmText {
  return {
    name: firm?.name ?? '',
    address: firm?.addressLines.join('\n') ?? '',
    phone: firm?.phone ?? '',
    email: firm?.email ?? '',
    taxNumber: firm?.taxNumber ?? '',
    registrations: firm?.registrations?.join('\n') ?? '',
    terms: firm?.terms ?? '',
    quoteNumbers: firm?.quoteNumbers ?? '',
    logo: firm?.logo,
    currency: 'GBP',
    heatFirst: firm?.heatFirst ?? 'W',
    priceDetail: firm?.priceDetail ?? 'lines',
  }
}

/** What was typed, as the request takes it. */
export function firmOf(text: FirmText): Firm {
  const lines = (typed: string) => typed.split('\n').filter((line) => line.trim() !== '')
  const some = (field: 'phone' | 'email' | 'taxNumber' | 'terms' | 'quoteNumbers') =>
    text[field].trim() === '' ? {} : { [field]: text[field].trim() }
  const registrations = lines(text.registrations)
  return {
    name: text.name,
    addressLines: lines(text.address),
    ...some('phone'),
    ...some('email'),
    ...some('taxNumber'),
    ...(registrations.length === 0 ? {} : { registrations }),
    ...(text.logo === undefined ? {} : { logo: text.logo }),
    ...some('terms'),
    ...some('quoteNumbers'),
    currency: text.currency,
    heatFirst: text.heatFirst,
    priceDetail: text.priceDetail,
  }
}
