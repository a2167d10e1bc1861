const spaces = {
  main: 'urn:oasis:names:specification:ubl:schema:xsd:Catalogue-2',
  cac: 'urn:oasis:names:specification:ubl:schema:xsd:CommonAggregateComponents-2',
  cbc: 'urn:oasis:names:specification:ubl:schema:xsd:CommonBasicComponents-2',
} as const

const party = (element: string, name: string) =>
  `  <cac:${element}><cac:PartyName><cbc:Name>${name}</cbc:Name></cac:PartyName></cac:${element}>`

/** A UBL 2.1 catalogue of five lines, one of which the supplier deletes. */
export function catalogueXml(currency: string): string {
  const price = (amount: string, rest = '') =>
    `<cac:Price><cbc:PriceAmount currencyID="${currency}">${amount}</cbc:PriceAmount>${rest}</cac:Price>`
  const place = (inside: string) =>
    `    <cac:RequiredItemLocationQuantity>${inside}</cac:RequiredItemLocationQuantity>`
  const line = (id: number, before: string, rest: readonly string[]) =>
    ['  <cac:CatalogueLine>', `    <cbc:ID>${id}</cbc:ID>`, before, ...rest, '  </cac:CatalogueLine>']
      .filter((text) => text !== '')
      .join('\n')
  const item = (inside: string) => `    <cac:Item>${inside}</cac:Item>`
  const seller = (code: string) =>
    `<cac:SellersItemIdentification><cbc:ID>${code}</cbc:ID></cac:SellersItemIdentification>`
  const standard =
    '<cac:StandardItemIdentification><cbc:ID schemeID="0160">2000000000015</cbc:ID></cac:StandardItemIdentification>'
  const lines = [
    line(1, '', [
      place(
        price(
          '4.10',
          '<cbc:BaseQuantity unitCode="C62">100</cbc:BaseQuantity><cac:ValidityPeriod><cbc:StartDate>2027-02-01</cbc:StartDate><cbc:EndDate>2027-06-30</cbc:EndDate></cac:ValidityPeriod>',
        ),
      ),
      item(
        `<cbc:PackQuantity unitCode="C62">50</cbc:PackQuantity><cbc:PackSizeNumeric>1</cbc:PackSizeNumeric><cbc:Name>Clip 15 mm &amp; screw</cbc:Name>${seller('00126')}${standard}`,
      ),
    ]),
    line(2, '', [
      place(`<cbc:MinimumQuantity unitCode="PK">10</cbc:MinimumQuantity>${price('9.50')}`),
      place(price('10.00')),
      item(
        `<cbc:Description>Elbow 15 mm, pack of ten</cbc:Description><cbc:PackQuantity unitCode="C62">10</cbc:PackQuantity>${seller('00127')}`,
      ),
    ]),
    line(3, '    <cbc:ActionCode>Delete</cbc:ActionCode>', [
      place(price('1.00')),
      item(`<cbc:Name>Old tee</cbc:Name>${seller('00128')}`),
    ]),
    line(
      4,
      '    <cac:LineValidityPeriod><cbc:StartDate>2027-03-01</cbc:StartDate></cac:LineValidityPeriod>',
      [
        place(price('7.25', '<cbc:BaseQuantity unitCode="EA">1</cbc:BaseQuantity>')),
        item(`<cbc:Name>Drain cock</cbc:Name>${seller('00129')}`),
      ],
    ),
    line(5, '', [item(`<cbc:Name>Nothing asked</cbc:Name>${seller('00130')}`)]),
  ]
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<Catalogue xmlns="${spaces.main}" xmlns:cac="${spaces.cac}" xmlns:cbc="${spaces.cbc}">`,
    '  <cbc:ID>C-2027-1</cbc:ID>',
    '  <cbc:IssueDate>2027-01-04</cbc:IssueDate>',
    '  <cac:ValidityPeriod><cbc:StartDate>2027-01-15</cbc:StartDate></cac:ValidityPeriod>',
    party('ProviderParty', 'Brackenholt Supply'),
    party('ReceiverParty', 'A firm of installers'),
    ...lines,
    '</Catalogue>',
    '',
  ].join('\n')
}
